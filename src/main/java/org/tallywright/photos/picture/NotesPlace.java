package org.tallywright.photos.picture;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.jspecify.annotations.Nullable;

/** Where the Exif notes of a photo lie in its file, by kind. Leaves a file that does not hold together to its reader. */
final class NotesPlace {
    private static final int MARK = 6; // "Exif", two zeros

    private NotesPlace() {}

    /** The TIFF structure, or null where the photo has no notes. */
    static @Nullable ByteBuffer of(PhotoKind kind, byte[] file) {
        return switch (kind) {
            case JPEG -> inJpeg(file);
            case PNG -> inChunks(ByteBuffer.wrap(file), 8, 4, "eXIf", 4);
            case WEBP -> inChunks(ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN), 12, 0, "EXIF", 0);
        };
    }

    private static @Nullable ByteBuffer inJpeg(byte[] file) {
        for (JpegParts.Part part : JpegParts.of(file).parts()) {
            if (part.marker() == JpegParts.APP1 && marked(file, part.from(), part.length())) {
                return ByteBuffer.wrap(file, part.from() + MARK, part.length() - MARK)
                        .slice();
            }
        }
        return null;
    }

    private static boolean marked(byte[] file, int at, int length) {
        return length > MARK + 8
                && file[at] == 'E'
                && file[at + 1] == 'x'
                && file[at + 2] == 'i'
                && file[at + 3] == 'f'
                && file[at + 4] == 0;
    }

    /**
     * Chunks of PNG (length, name, content, check sum) and of RIFF (name, length, content, one byte more where the length
     * is odd).
     */
    private static @Nullable ByteBuffer inChunks(ByteBuffer file, int start, int nameAt, String name, int after) {
        int at = start;
        while (at >= 0 && at + 8 <= file.limit()) {
            int length = file.getInt(at + 4 - nameAt);
            int content = at + 8;
            if (length < 0 || length > file.limit() - content) {
                return null;
            }
            if (named(file, at + nameAt, name)) {
                int skip = length > MARK && file.get(content) == 'E' ? MARK : 0;
                return length - skip < 8 ? null : file.slice(content + skip, length - skip);
            }
            at = content + length + after + (after == 0 ? length & 1 : 0);
        }
        return null;
    }

    private static boolean named(ByteBuffer file, int at, String name) {
        for (int i = 0; i < name.length(); i++) {
            if (file.get(at + i) != name.charAt(i)) {
                return false;
            }
        }
        return true;
    }
}
