package org.tallywright.photos.picture;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.jspecify.annotations.Nullable;

/** Photos as a phone would send them, drawn here: four corners of different colours, with the notes that a camera writes. */
public final class SamplePhotos {
    public static final String PLACE = "OGRE 41 07 54.13 N";
    public static final String CAMERA = "Ogre camera 7";

    private SamplePhotos() {}

    /** Upright: red and green above, blue and white below. */
    static BufferedImage corners(int width, int height) {
        return corners(width, height, BufferedImage.TYPE_3BYTE_BGR);
    }

    static BufferedImage corners(int width, int height, int type) {
        BufferedImage picture = new BufferedImage(width, height, type);
        Graphics2D pen = picture.createGraphics();
        Color[] colours = {Color.RED, Color.GREEN, Color.BLUE, Color.WHITE};
        for (int i = 0; i < 4; i++) {
            pen.setColor(colours[i]);
            pen.fillRect(i % 2 * width / 2, i / 2 * height / 2, (width + 1) / 2, (height + 1) / 2);
        }
        pen.dispose();
        return picture;
    }

    public static byte[] bytes(BufferedImage picture, String format) {
        try {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            if (!ImageIO.write(picture, format, out)) {
                throw new IllegalStateException("no writer of " + format);
            }
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A photo of the saw, the same for the same number and another for each other. */
    public static byte[] jpeg(int number) {
        BufferedImage picture = corners(64, 48);
        picture.setRGB(number % 64, number / 64 % 48, 0x123456);
        return withNotes(bytes(picture, "jpeg"), notes(ByteOrder.BIG_ENDIAN, 1, "2026:11:24 15:30:00", null));
    }

    /** Notes go first, behind the mark that starts the file. */
    public static byte[] withNotes(byte[] jpeg, byte[] tiff) {
        ByteBuffer out = ByteBuffer.allocate(jpeg.length + tiff.length + 10);
        out.put(jpeg, 0, 2).putShort((short) 0xffe1).putShort((short) (tiff.length + 8));
        out.put("Exif\0\0".getBytes(StandardCharsets.ISO_8859_1)).put(tiff).put(jpeg, 2, jpeg.length - 2);
        return out.array();
    }

    /** With make, orientation, day, and the place where it was taken, as CIPA DC-008 lays them out. */
    public static byte[] notes(ByteOrder order, int orientation, @Nullable String taken, @Nullable String offset) {
        ByteBuffer tiff = ByteBuffer.allocate(400).order(order);
        tiff.put((order == ByteOrder.BIG_ENDIAN ? "MM" : "II").getBytes(StandardCharsets.ISO_8859_1));
        tiff.putShort((short) 42).putInt(8);
        tiff.putShort((short) 4);
        entry(tiff, 0x010f, 2, CAMERA.length(), 300);
        tiff.putShort((short) 0x0112)
                .putShort((short) 3)
                .putInt(1)
                .putShort((short) orientation)
                .putShort((short) 0);
        entry(tiff, 0x8769, 4, 1, 100);
        entry(tiff, 0x8825, 4, 1, 200);
        tiff.putInt(0);
        tiff.position(100);
        tiff.putShort((short) ((taken == null ? 0 : 1) + (offset == null ? 0 : 1)));
        if (taken != null) {
            entry(tiff, 0x9003, 2, 20, 160);
        }
        if (offset != null) {
            entry(tiff, 0x9011, 2, 7, 185);
        }
        tiff.position(160).put(words(taken)).position(185).put(words(offset));
        tiff.position(200).putShort((short) 1);
        entry(tiff, 0x001b, 7, PLACE.length(), 240);
        tiff.position(240).put(words(PLACE)).position(300).put(words(CAMERA));
        return tiff.array();
    }

    private static void entry(ByteBuffer tiff, int tag, int type, int count, int value) {
        tiff.putShort((short) tag).putShort((short) type).putInt(count).putInt(value);
    }

    private static byte[] words(@Nullable String words) {
        return (words == null ? "" : words + "\0").getBytes(StandardCharsets.ISO_8859_1);
    }

    /** The head of a photo as some phones keep it. */
    public static byte[] heic(String brand) {
        ByteBuffer head = ByteBuffer.allocate(64);
        head.putInt(24).put(("ftyp" + brand + "\0\0\0\0" + brand + "mif1").getBytes(StandardCharsets.ISO_8859_1));
        return head.array();
    }

    /** A small file that claims to be of this size. */
    static byte[] pngOf(int width, int height) {
        byte[] png = bytes(corners(8, 8), "png");
        ByteBuffer head = ByteBuffer.wrap(png);
        head.putInt(16, width).putInt(20, height);
        CRC32 sum = new CRC32();
        sum.update(png, 12, 17);
        head.putInt(29, (int) sum.getValue());
        return png;
    }

    static byte[] jpegOf(int width, int height) {
        byte[] jpeg = bytes(corners(64, 48), "jpeg");
        for (int at = 2; at < jpeg.length; at++) {
            if (jpeg[at] == (byte) 0xff && jpeg[at + 1] == (byte) 0xc0) {
                ByteBuffer.wrap(jpeg).putShort(at + 5, (short) height).putShort(at + 7, (short) width);
                return jpeg;
            }
        }
        throw new IllegalStateException("no frame");
    }

    /** Notes of a PNG, behind its first chunk. */
    static byte[] pngWithNotes(byte[] png, byte[] tiff) {
        byte[] named = Arrays.copyOf("eXIf".getBytes(StandardCharsets.ISO_8859_1), tiff.length + 4);
        System.arraycopy(tiff, 0, named, 4, tiff.length);
        CRC32 sum = new CRC32();
        sum.update(named);
        ByteBuffer out = ByteBuffer.allocate(png.length + tiff.length + 12);
        out.put(png, 0, 33).putInt(tiff.length).put(named).putInt((int) sum.getValue());
        return out.put(png, 33, png.length - 33).array();
    }
}
