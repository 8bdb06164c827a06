package org.tallywright.photos.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tallywright.shared.Refused;

class PhotoReaderTest {
    private static final ZoneId SHOP = ZoneId.of("America/New_York");
    private static final int RED = 0xff0000;
    private static final int GREEN = 0x00ff00;
    private static final int BLUE = 0x0000ff;
    private static final int WHITE = 0xffffff;

    private final PhotoReader reader = new PhotoReader();

    private PhotoReader.Developed read(byte[] file) {
        return reader.read(file, SHOP);
    }

    /** Which side of what is seen the first kept row and the first kept column are: the table of Exif, tag 274. */
    @ParameterizedTest
    @CsvSource({
        "1, top, left", "2, top, right", "3, bottom, right", "4, bottom, left",
        "5, left, top", "6, right, top", "7, right, bottom", "8, left, bottom"
    })
    void standsUprightHoweverTheCameraWasHeld(int orientation, String row, String column) throws IOException {
        BufferedImage seen = SamplePhotos.corners(640, 480);
        byte[] jpeg = SamplePhotos.bytes(asKept(seen, row, column), "jpeg");
        for (ByteOrder order : List.of(ByteOrder.BIG_ENDIAN, ByteOrder.LITTLE_ENDIAN)) {
            PhotoReader.Developed photo =
                    read(SamplePhotos.withNotes(jpeg, SamplePhotos.notes(order, orientation, null, null)));
            assertThat(List.of(photo.width(), photo.height())).containsExactly(640, 480);
            assertCorners(photo.large(), 640, 480);
            assertCorners(photo.small(), 320, 240);
        }
    }

    private static BufferedImage asKept(BufferedImage seen, String row, String column) {
        int width = seen.getWidth();
        int height = seen.getHeight();
        boolean lying = row.equals("left") || row.equals("right");
        BufferedImage kept = new BufferedImage(lying ? height : width, lying ? width : height, seen.getType());
        for (int r = 0; r < kept.getHeight(); r++) {
            for (int c = 0; c < kept.getWidth(); c++) {
                int x = place(row, r, width, column, c, "left", "right");
                int y = place(row, r, height, column, c, "top", "bottom");
                kept.setRGB(c, r, seen.getRGB(x, y));
            }
        }
        return kept;
    }

    private static int place(String row, int r, int size, String column, int c, String start, String end) {
        int at = row.equals(start) || row.equals(end) ? r : c;
        String side = row.equals(start) || row.equals(end) ? row : column;
        return side.equals(start) ? at : size - 1 - at;
    }

    private static void assertCorners(byte[] jpeg, int width, int height) throws IOException {
        BufferedImage picture = ImageIO.read(new ByteArrayInputStream(jpeg));
        assertThat(List.of(picture.getWidth(), picture.getHeight())).containsExactly(width, height);
        assertColour(picture, width / 4, height / 4, RED);
        assertColour(picture, 3 * width / 4, height / 4, GREEN);
        assertColour(picture, width / 4, 3 * height / 4, BLUE);
        assertColour(picture, 3 * width / 4, 3 * height / 4, WHITE);
    }

    private static void assertColour(BufferedImage picture, int x, int y, int colour) {
        int rgb = picture.getRGB(x, y);
        for (int shift : new int[] {16, 8, 0}) {
            assertThat(rgb >> shift & 0xff)
                    .as("%06x at %d, %d", rgb & 0xffffff, x, y)
                    .isCloseTo(colour >> shift & 0xff, org.assertj.core.data.Offset.offset(12));
        }
    }

    @Test
    void keepsNeitherThePlaceNorAnyOtherNote() {
        byte[] tiff = SamplePhotos.notes(ByteOrder.LITTLE_ENDIAN, 6, "2026:11:24 15:30:00", null);
        byte[] sent = SamplePhotos.withNotes(SamplePhotos.bytes(SamplePhotos.corners(2000, 1500), "jpeg"), tiff);
        assertThat(words(sent)).contains("Exif", SamplePhotos.PLACE, SamplePhotos.CAMERA);
        PhotoReader.Developed photo = read(sent);
        for (byte[] kept : List.of(photo.large(), photo.small())) {
            assertThat(words(kept)).doesNotContain("Exif", "OGRE", "Ogre", "2026:11:24", "http", "ICC_PROFILE");
            assertThat(JpegParts.of(kept).parts())
                    .extracting(JpegParts.Part::marker)
                    .doesNotContain(JpegParts.APP1, 0xe2, 0xed, 0xfe);
        }
    }

    private static String words(byte[] bytes) {
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }

    @Test
    void makesLargePhotosSmallAndLeavesSmallOnesAlone() throws IOException {
        PhotoReader.Developed large = read(SamplePhotos.bytes(SamplePhotos.corners(4000, 3000), "jpeg"));
        assertThat(List.of(large.width(), large.height())).containsExactly(1600, 1200);
        assertCorners(large.large(), 1600, 1200);
        assertCorners(large.small(), 320, 240);
        PhotoReader.Developed tall = read(SamplePhotos.bytes(SamplePhotos.corners(1000, 9000), "jpeg"));
        assertThat(List.of(tall.width(), tall.height())).containsExactly(178, 1600);
        PhotoReader.Developed small = read(SamplePhotos.bytes(SamplePhotos.corners(200, 100), "jpeg"));
        assertThat(List.of(small.width(), small.height())).containsExactly(200, 100);
        assertCorners(small.small(), 200, 100);
        PhotoReader.Developed dot = read(SamplePhotos.bytes(SamplePhotos.corners(1, 1), "png"));
        assertThat(List.of(dot.width(), dot.height())).containsExactly(1, 1);
        PhotoReader.Developed line = read(SamplePhotos.bytes(SamplePhotos.corners(5000, 1), "png"));
        assertThat(List.of(line.width(), line.height())).containsExactly(1600, 1);
    }

    /** Fine stripes come out as their mean; every third pixel alone would make new stripes of them. */
    @Test
    void averagesWhatItLeavesOut() throws IOException {
        BufferedImage stripes = new BufferedImage(3000, 300, BufferedImage.TYPE_3BYTE_BGR);
        for (int y = 0; y < 300; y++) {
            for (int x = 0; x < 3000; x++) {
                stripes.setRGB(x, y, x % 2 == 0 ? WHITE : 0);
            }
        }
        BufferedImage shrunk = Shrink.to(stripes, 1500, 150);
        assertColour(shrunk, 700, 70, 0x808080);
        BufferedImage uneven = Shrink.to(stripes, 1000, 100);
        assertThat(uneven.getRGB(500, 50) & 0xff).isIn(85, 170);
        assertThat(read(SamplePhotos.bytes(stripes, "png")).width()).isEqualTo(1600);
    }

    @Test
    void fitsTheRoomOfThePictures() {
        BufferedImage noise = new BufferedImage(1600, 1600, BufferedImage.TYPE_INT_RGB);
        Random random = new Random(7);
        for (int y = 0; y < 1600; y++) {
            for (int x = 0; x < 1600; x++) {
                noise.setRGB(x, y, random.nextInt());
            }
        }
        PhotoReader.Developed photo = read(SamplePhotos.bytes(noise, "png"));
        assertThat(photo.large()).hasSizeLessThanOrEqualTo(2_000_000);
        assertThat(photo.small()).hasSizeLessThanOrEqualTo(120_000);
    }

    @Test
    void readsGreysPalettesTransparencyAndFineColours() throws IOException {
        assertCorners(
                read(SamplePhotos.bytes(SamplePhotos.corners(640, 480), "png")).large(), 640, 480);
        assertCorners(
                read(SamplePhotos.bytes(SamplePhotos.corners(640, 480, BufferedImage.TYPE_BYTE_INDEXED), "png"))
                        .large(),
                640,
                480);
        BufferedImage clear = new BufferedImage(640, 480, BufferedImage.TYPE_INT_ARGB);
        clear.setRGB(1, 1, 0xff000000);
        assertColour(picture(SamplePhotos.bytes(clear, "png")), 300, 300, WHITE);
        for (int type : new int[] {BufferedImage.TYPE_BYTE_GRAY, BufferedImage.TYPE_USHORT_GRAY}) {
            assertColour(picture(SamplePhotos.bytes(grey(type), "png")), 300, 300, 0x646464);
        }
        assertColour(picture(SamplePhotos.bytes(grey(BufferedImage.TYPE_BYTE_GRAY), "jpeg")), 300, 300, 0x646464);
        assertCorners(read(SamplePhotos.bytes(fine(640, 480), "png")).large(), 640, 480);
    }

    private BufferedImage picture(byte[] file) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(read(file).large()));
    }

    private static BufferedImage grey(int type) {
        BufferedImage grey = new BufferedImage(640, 480, type);
        WritableRaster raster = grey.getRaster();
        for (int y = 0; y < 480; y++) {
            for (int x = 0; x < 640; x++) {
                raster.setSample(x, y, 0, type == BufferedImage.TYPE_BYTE_GRAY ? 0x64 : 0x6464);
            }
        }
        return grey;
    }

    /** Sixteen bits for each colour. */
    private static BufferedImage fine(int width, int height) {
        var model = new java.awt.image.ComponentColorModel(
                java.awt.color.ColorSpace.getInstance(java.awt.color.ColorSpace.CS_sRGB),
                false,
                false,
                java.awt.Transparency.OPAQUE,
                java.awt.image.DataBuffer.TYPE_USHORT);
        WritableRaster raster = model.createCompatibleWritableRaster(width, height);
        BufferedImage plain = SamplePhotos.corners(width, height);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int rgb = plain.getRGB(x, y);
                raster.setPixel(
                        x, y, new int[] {(rgb >> 16 & 0xff) * 257, (rgb >> 8 & 0xff) * 257, (rgb & 0xff) * 257});
            }
        }
        return new BufferedImage(model, raster, false, null);
    }

    /** Cyan, magenta, yellow and black, as print shops send them: turned round, and marked as such. */
    @Test
    void readsFourInks() throws IOException {
        WritableRaster inks = Raster.createInterleavedRaster(0, 320, 240, 4, null);
        for (int y = 0; y < 240; y++) {
            for (int x = 0; x < 320; x++) {
                inks.setPixel(x, y, x < 160 ? new int[] {255, 0, 0, 255} : new int[] {255, 255, 255, 255});
            }
        }
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (var stream = ImageIO.createImageOutputStream(out)) {
            writer.setOutput(stream);
            writer.write(null, new IIOImage(inks, null, null), null);
        }
        byte[] plain = out.toByteArray();
        ByteBuffer marked = ByteBuffer.allocate(plain.length + 16);
        marked.put(plain, 0, 2).putShort((short) 0xffee).putShort((short) 14);
        marked.put("Adobe".getBytes(StandardCharsets.ISO_8859_1))
                .putShort((short) 100)
                .putInt(0)
                .put((byte) 0);
        BufferedImage read = picture(marked.put(plain, 2, plain.length - 2).array());
        int left = read.getRGB(40, 120);
        int right = read.getRGB(280, 120);
        assertThat(left >> 16 & 0xff).isGreaterThan(180);
        assertThat(left & 0xff).isLessThan(90);
        assertThat(right & 0xff).isGreaterThan(230);
    }

    @Test
    void readsProgressiveJpeg() throws IOException {
        assertCorners(read(progressive(SamplePhotos.corners(640, 480))).large(), 640, 480);
    }

    private static byte[] progressive(BufferedImage picture) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (var stream = ImageIO.createImageOutputStream(out)) {
            writer.setOutput(stream);
            ImageWriteParam how = writer.getDefaultWriteParam();
            how.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
            writer.write(null, new IIOImage(picture, null, null), how);
        }
        assertThat(JpegParts.of(out.toByteArray()).progressive()).isTrue();
        return out.toByteArray();
    }

    @ParameterizedTest
    @ValueSource(strings = {"lossy.webp", "lossless.webp", "turned.webp"})
    void readsWebp(String name) throws IOException {
        assertCorners(read(file(name)).large(), 64, 48);
    }

    private static byte[] file(String name) throws IOException {
        try (var in = PhotoReaderTest.class.getResourceAsStream(name)) {
            return java.util.Objects.requireNonNull(in, name).readAllBytes();
        }
    }

    @Test
    void readsTheNotesOfPngToo() throws IOException {
        BufferedImage kept = asKept(SamplePhotos.corners(640, 480), "right", "top");
        byte[] tiff = SamplePhotos.notes(ByteOrder.BIG_ENDIAN, 6, "2026:11:24 15:30:00", "+01:00");
        PhotoReader.Developed photo = read(SamplePhotos.pngWithNotes(SamplePhotos.bytes(kept, "png"), tiff));
        assertCorners(photo.large(), 640, 480);
        assertThat(photo.taken()).isEqualTo(Instant.parse("2026-11-24T14:30:00Z"));
    }

    @Test
    void knowsWhenItWasTakenByTheShopsClockUnlessTheCameraNamesItsOwn() {
        byte[] plain = SamplePhotos.bytes(SamplePhotos.corners(64, 48), "jpeg");
        assertThat(taken(plain, "2026:11:24 15:30:00", null)).isEqualTo(Instant.parse("2026-11-24T20:30:00Z"));
        assertThat(taken(plain, "2026:11:24 15:30:00", "+01:00")).isEqualTo(Instant.parse("2026-11-24T14:30:00Z"));
        assertThat(taken(plain, "2026:11:24 15:30:00", "noonish")).isEqualTo(Instant.parse("2026-11-24T20:30:00Z"));
        assertThat(taken(plain, "0000:00:00 00:00:00", null)).isNull();
        assertThat(taken(plain, "2026:02:30 10:00:00", null)).isNull();
        assertThat(read(plain).taken()).isNull();
    }

    private Instant taken(byte[] jpeg, String when, String offset) {
        return read(SamplePhotos.withNotes(jpeg, SamplePhotos.notes(ByteOrder.BIG_ENDIAN, 1, when, offset)))
                .taken();
    }

    /** Pointers in circles and beyond the end, counts of billions, and every single byte changed. */
    @Test
    void isNotLedAstrayByBadNotes() {
        byte[] plain = SamplePhotos.bytes(SamplePhotos.corners(16, 16), "jpeg");
        byte[] good = SamplePhotos.notes(ByteOrder.BIG_ENDIAN, 1, "2026:11:24 15:30:00", null);
        for (int at = 0; at < 200; at++) {
            for (int value : new int[] {0, 8, 0x7f, 0xff}) {
                byte[] bad = good.clone();
                bad[at] = (byte) value;
                assertThat(read(SamplePhotos.withNotes(plain, bad)).width()).isEqualTo(16);
            }
        }
        for (int length = 0; length < 40; length++) {
            assertThat(read(SamplePhotos.withNotes(plain, Arrays.copyOf(good, length)))
                            .width())
                    .isEqualTo(16);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"heic", "heix", "mif1", "hevc", "avif"})
    void saysWhatToDoAboutWhatOnlyPhonesRead(String brand) {
        refuses(SamplePhotos.heic(brand), "choose JPEG");
    }

    @Test
    void refusesWhatIsNoPhoto() {
        refuses(new byte[0], "is empty");
        refuses("%PDF-1.7 and more".getBytes(StandardCharsets.ISO_8859_1), "not a photo that can be read");
        refuses("<svg xmlns='http://www.w3.org/2000/svg'/>".getBytes(StandardCharsets.UTF_8), "not a photo");
        refuses(SamplePhotos.bytes(SamplePhotos.corners(8, 8), "gif"), "JPEG, PNG and WebP can");
        refuses(SamplePhotos.heic("mp42"), "film");
        refuses(new byte[] {(byte) 0xff, (byte) 0xd8, (byte) 0xff}, "not whole");
    }

    @Test
    void refusesWhatBrokeOffOnTheWay() throws IOException {
        BufferedImage noise = SamplePhotos.corners(640, 480);
        Random random = new Random(7);
        for (int i = 0; i < 50_000; i++) {
            noise.setRGB(random.nextInt(640), random.nextInt(480), random.nextInt());
        }
        for (byte[] whole : List.of(
                SamplePhotos.bytes(noise, "jpeg"),
                progressive(noise),
                SamplePhotos.bytes(noise, "png"),
                file("lossy.webp"))) {
            for (double share : new double[] {0.1, 0.5, 0.9}) {
                refuses(Arrays.copyOf(whole, (int) (whole.length * share)), "not whole");
            }
        }
    }

    /** A few bytes that claim to be a wall of pixels are refused before any picture is made of them. */
    @Test
    void refusesMorePixelsThanItHasRoomFor() {
        refuses(SamplePhotos.pngOf(60_000, 60_000), "3600 million pixels; up to 60 million");
        refuses(SamplePhotos.pngOf(Integer.MAX_VALUE, Integer.MAX_VALUE), "up to 60 million");
        refuses(SamplePhotos.jpegOf(65_000, 65_000), "4225 million pixels");
        refuses(SamplePhotos.jpegOf(7_800, 7_800), "61 million pixels; up to 60 million");
    }

    @Test
    void refusesScansWithoutEnd() throws IOException {
        byte[] jpeg = progressive(SamplePhotos.corners(64, 48));
        JpegParts.Part scan = JpegParts.of(jpeg).parts().stream()
                .filter(part -> part.marker() == 0xda)
                .findFirst()
                .orElseThrow();
        ByteBuffer many = ByteBuffer.allocate(jpeg.length + 100 * (scan.length() + 4));
        many.put(jpeg, 0, scan.from() - 4);
        for (int i = 0; i < 100; i++) {
            many.put(jpeg, scan.from() - 4, scan.length() + 4);
        }
        many.put(jpeg, scan.from() - 4, jpeg.length - scan.from() + 4);
        refuses(many.array(), "too long to read");
    }

    private void refuses(byte[] file, String words) {
        assertThatThrownBy(() -> read(file)).isInstanceOf(Refused.class).hasMessageContaining(words);
    }
}
