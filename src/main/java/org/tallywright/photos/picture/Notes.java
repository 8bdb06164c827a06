package org.tallywright.photos.picture;

import java.time.LocalDateTime;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;

/**
 * The two things that are taken from a photo's own notes; all else in them is neither read nor kept.
 *
 * @param orientation 1 to 8 as in Exif; 1 is upright
 * @param taken by the camera's clock; null where it says nothing readable
 * @param offset of that clock from UTC, where the camera wrote it down
 */
record Notes(
        int orientation,
        @Nullable LocalDateTime taken,
        @Nullable ZoneOffset offset) {
    static final Notes NONE = new Notes(1, null, null);
}
