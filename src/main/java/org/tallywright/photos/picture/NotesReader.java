package org.tallywright.photos.picture;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import org.jspecify.annotations.Nullable;

/**
 * Reads orientation and date from the Exif notes of a photo: two directories of the TIFF structure in which Exif (CIPA
 * DC-008) keeps them. Nothing is followed but the one pointer from the first directory to the second, so that notes
 * which point in circles or beyond their end do no harm; what cannot be read counts as not there.
 */
final class NotesReader {
    private static final int ORIENTATION = 0x0112;
    private static final int SECOND = 0x8769;
    private static final int TAKEN = 0x9003;
    private static final int OFFSET = 0x9011;
    private static final int ENTRY = 12;
    private static final DateTimeFormatter CAMERA =
            DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss").withResolverStyle(ResolverStyle.STRICT);

    private final ByteBuffer tiff;

    private NotesReader(ByteBuffer tiff) {
        this.tiff = tiff;
    }

    static Notes read(PhotoKind kind, byte[] file) {
        try {
            ByteBuffer tiff = NotesPlace.of(kind, file);
            return tiff == null ? Notes.NONE : new NotesReader(ordered(tiff)).read();
        } catch (IndexOutOfBoundsException | IllegalArgumentException cutShort) {
            return Notes.NONE;
        }
    }

    private static ByteBuffer ordered(ByteBuffer tiff) {
        return tiff.slice().order(tiff.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    }

    private Notes read() {
        int first = tiff.getInt(4);
        int second = entry(first, SECOND);
        int orientation = entry(first, ORIENTATION);
        int turned = orientation < 0 ? 1 : tiff.getShort(orientation + 8);
        int at = second < 0 ? 0 : tiff.getInt(second + 8);
        return new Notes(
                turned < 1 || turned > 8 ? 1 : turned,
                at == 0 ? null : time(words(at, TAKEN)),
                at == 0 ? null : offset(words(at, OFFSET)));
    }

    /** Where the entry of a directory starts; -1 where it has none. */
    private int entry(int directory, int tag) {
        int many = tiff.getShort(directory) & 0xffff;
        for (int i = 0; i < many; i++) {
            int at = directory + 2 + i * ENTRY;
            if (at + ENTRY > tiff.limit()) {
                return -1;
            }
            if ((tiff.getShort(at) & 0xffff) == tag) {
                return at;
            }
        }
        return -1;
    }

    private String words(int directory, int tag) {
        int at = entry(directory, tag);
        if (at < 0) {
            return "";
        }
        int length = tiff.getInt(at + 4);
        if (length < 5 || length > 40) {
            return "";
        }
        byte[] words = new byte[length];
        tiff.get(tiff.getInt(at + 8), words);
        return new String(words, StandardCharsets.ISO_8859_1).replace("\0", "").strip();
    }

    private static @Nullable LocalDateTime time(String words) {
        try {
            return words.isEmpty() ? null : LocalDateTime.parse(words, CAMERA);
        } catch (DateTimeException notADate) {
            return null;
        }
    }

    private static @Nullable ZoneOffset offset(String words) {
        try {
            return words.isEmpty() ? null : ZoneOffset.of(words);
        } catch (DateTimeException notAnOffset) {
            return null;
        }
    }
}
