package org.tallywright.photos.picture;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.Set;
import org.tallywright.shared.Refused;

/**
 * What a file is, by its first bytes; its name and what a browser says of it are not asked.
 *
 * @see #most for how large a picture of a kind may be
 */
enum PhotoKind {
    JPEG("jpeg", 60_000_000),
    PNG("png", 60_000_000),
    /** Its reader is slow: seconds for this many. */
    WEBP("webp", 5_000_000);

    private static final int HEAD = 16;
    private static final Set<String> PHONE_ONLY =
            Set.of("heic", "heix", "heim", "heis", "hevc", "hevx", "hevm", "hevs", "mif1", "msf1", "avif", "avis");

    private final String format;
    private final int pixels;

    PhotoKind(String format, int pixels) {
        this.format = format;
        this.pixels = pixels;
    }

    /** As readers are asked for. */
    String format() {
        return format;
    }

    /** The most pixels that are read. */
    int most() {
        return pixels;
    }

    /** @throws Refused for anything that cannot be read, with what to do about it */
    static PhotoKind of(byte[] file) {
        if (file.length == 0) {
            throw new Refused("The file is empty. Send the photo again.");
        }
        byte[] head = Arrays.copyOf(file, HEAD);
        if (starts(head, 0, 0xff, 0xd8, 0xff)) {
            return JPEG;
        }
        if (starts(head, 0, 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n')) {
            return PNG;
        }
        if (words(head, 0, 4).equals("RIFF") && words(head, 8, 4).equals("WEBP")) {
            return WEBP;
        }
        if (words(head, 4, 4).equals("ftyp")) {
            throw unreadable(words(head, 8, 4).toLowerCase(Locale.ROOT));
        }
        throw new Refused("This is not a photo that can be read here. JPEG, PNG and WebP can.");
    }

    private static Refused unreadable(String brand) {
        return PHONE_ONLY.contains(brand)
                ? new Refused("This photo is in a format (HEIC or AVIF) that cannot be read here. In the settings of"
                        + " the phone's camera choose JPEG, often called \"most compatible\", or let the phone share"
                        + " the photo as JPEG, and send it again.")
                : new Refused("This is a film or a recording. Only photos can be kept: JPEG, PNG or WebP.");
    }

    private static boolean starts(byte[] head, int at, int... bytes) {
        for (int i = 0; i < bytes.length; i++) {
            if ((head[at + i] & 0xff) != bytes[i]) {
                return false;
            }
        }
        return true;
    }

    private static String words(byte[] head, int at, int length) {
        return new String(head, at, length, StandardCharsets.ISO_8859_1);
    }
}
