package org.tallywright.photos.picture;

import com.twelvemonkeys.imageio.stream.ByteArrayImageInputStream;
import java.awt.image.BufferedImage;
import java.awt.image.SampleModel;
import java.io.IOException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Iterator;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import javax.imageio.IIOException;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.stream.ImageInputStream;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Refused;

/**
 * Reads a photo and makes of it what is kept: an upright JPEG for the page and one for lists, both without any notes.
 * One photo at a time, and of a large one only every second, third ... pixel, so that it fits beside the rest of the
 * server: about 50 MB for the picture as read, whatever its size.
 */
public final class PhotoReader {
    /** Longest side of the two kept pictures, in pixels. */
    public static final int LARGE = 1600;

    public static final int SMALL = 320;

    private static final int MOST_LARGE = 2_000_000;
    private static final int MOST_SMALL = 120_000;
    private static final long ROOM = 50_000_000;
    private static final int MOST_PROGRESSIVE = 24_000_000;
    private static final int MOST_SCANS = 64;
    private static final int PATIENCE_SECONDS = 60;

    private final Semaphore turn = new Semaphore(1, true);

    /**
     * @param taken by the camera's clock; null where it says nothing
     * @param width of the large picture, upright, as {@code height}
     */
    public record Developed(
            byte[] large,
            byte[] small,
            int width,
            int height,
            @Nullable Instant taken) {}

    /**
     * @param zone of a camera's clock that does not name its own
     * @throws Refused in words for whatever cannot be read
     */
    public Developed read(byte[] file, ZoneId zone) {
        PhotoKind kind = PhotoKind.of(file);
        Notes notes = NotesReader.read(kind, file);
        return inTurn(() -> develop(kind, file, notes, zone));
    }

    private Developed inTurn(Supplier<Developed> work) {
        try {
            if (!turn.tryAcquire(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                throw new Refused("Other photos are being read just now. Send this one again in a minute.");
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new Refused("The server is being stopped. Send this photo again later.");
        }
        try {
            return work.get();
        } finally {
            turn.release();
        }
    }

    private static Developed develop(PhotoKind kind, byte[] file, Notes notes, ZoneId zone) {
        BufferedImage large = Upright.of(decoded(kind, file), notes.orientation());
        int[] size = Shrink.size(large.getWidth(), large.getHeight(), SMALL);
        BufferedImage small = Shrink.to(large, size[0], size[1]);
        return new Developed(
                JpegBytes.of(large, MOST_LARGE),
                JpegBytes.of(small, MOST_SMALL),
                large.getWidth(),
                large.getHeight(),
                taken(notes, zone));
    }

    private static @Nullable Instant taken(Notes notes, ZoneId zone) {
        var clock = notes.taken();
        if (clock == null) {
            return null;
        }
        ZoneOffset offset = notes.offset();
        return offset == null ? clock.atZone(zone).toInstant() : clock.toInstant(offset);
    }

    /** At the size of the page, in the colours of the file, not yet turned. */
    private static BufferedImage decoded(PhotoKind kind, byte[] file) {
        Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(kind.format());
        ImageReader reader = readers.next();
        try (ImageInputStream in = new ByteArrayImageInputStream(file)) {
            reader.setInput(in, true, true);
            int[] size = guarded(kind, file, reader);
            boolean[] cut = {false};
            reader.addIIOReadWarningListener((source, warning) -> cut[0] |= warning.contains("Premature end"));
            ImageReadParam how = reader.getDefaultReadParam();
            int every = every(reader, size[0], size[1]);
            how.setSourceSubsampling(every, every, 0, 0);
            BufferedImage read = reader.read(0, how);
            if (cut[0]) {
                throw broken();
            }
            int[] kept = Shrink.size(size[0], size[1], LARGE);
            return Shrink.to(read, Math.min(kept[0], read.getWidth()), Math.min(kept[1], read.getHeight()));
        } catch (IOException | RuntimeException unreadable) {
            throw unreadable instanceof Refused refused ? refused : broken();
        } finally {
            reader.dispose();
        }
    }

    /** Width and height, before any picture is read. */
    private static int[] guarded(PhotoKind kind, byte[] file, ImageReader reader) throws IOException {
        int width = reader.getWidth(0);
        int height = reader.getHeight(0);
        if (width < 1 || height < 1) {
            throw new IIOException("no size");
        }
        long most = kind.most();
        if (kind == PhotoKind.JPEG) {
            JpegParts parts = JpegParts.of(file);
            if (!parts.ended()) {
                throw broken();
            }
            if (parts.scans() > MOST_SCANS) {
                throw new Refused("The photo is packed in a way that takes too long to read. Save it anew as JPEG.");
            }
            most = parts.progressive() ? MOST_PROGRESSIVE : most;
        }
        if ((long) width * height > most) {
            throw new Refused("The photo has " + millions((long) width * height) + " million pixels; up to "
                    + millions(most) + " million can be read. Make it smaller and send it again.");
        }
        return new int[] {width, height};
    }

    private static Refused broken() {
        return new Refused("The photo is not whole; it may have broken off on the way. Send it again.");
    }

    private static long millions(long pixels) {
        return (pixels + 500_000) / 1_000_000;
    }

    /** Every how many pixels one is read: as few as fit into the room, but twice as many as are kept where there is a choice. */
    private static int every(ImageReader reader, int width, int height) throws IOException {
        long pixels = (long) width * height;
        int every = Math.max(1, Math.max(width, height) / (2 * LARGE));
        while (pixels * bytesOfPixel(reader) / ((long) every * every) > ROOM) {
            every++;
        }
        return every;
    }

    private static int bytesOfPixel(ImageReader reader) throws IOException {
        ImageTypeSpecifier type = reader.getRawImageType(0);
        if (type == null) {
            return 4;
        }
        SampleModel samples = type.getSampleModel();
        int bytes = 0;
        for (int bits : samples.getSampleSize()) {
            bytes += (bits + 7) / 8;
        }
        boolean redrawn =
                type.getColorModel().hasAlpha() || bytes < samples.getNumBands() || samples.getNumBands() == 1;
        return redrawn ? bytes + 3 : bytes;
    }
}
