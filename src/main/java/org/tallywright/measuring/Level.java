package org.tallywright.measuring;

import java.util.Arrays;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** A height at which the width of an opening is read, at the back and in front. */
enum Level {
    FLOOR(Reading.BACK_FLOOR, Reading.FRONT_FLOOR, Sum.SPLAY_FLOOR, 0),
    MIDDLE(Reading.BACK_MIDDLE, Reading.FRONT_MIDDLE, Sum.SPLAY_MIDDLE, 0.5),
    TOP(Reading.BACK_TOP, Reading.FRONT_TOP, Sum.SPLAY_TOP, 1);

    final Reading back;
    final Reading front;
    final Sum splay;
    /** As a share of the height. */
    final double up;

    Level(Reading back, Reading front, Sum splay, double up) {
        this.back = back;
        this.front = front;
        this.splay = splay;
        this.up = up;
    }

    Reading at(boolean atBack) {
        return atBack ? back : front;
    }

    /** The lowest that was read at back and front: the one that the diagonals lie in. */
    static @Nullable Level lowest(Set<Reading> known) {
        return Arrays.stream(values())
                .filter(level -> known.contains(level.back) && known.contains(level.front))
                .findFirst()
                .orElse(null);
    }

    /** The lowest that was read at all, at both ends before at one. */
    static @Nullable Level read(Set<Reading> known) {
        Level both = lowest(known);
        return both != null
                ? both
                : Arrays.stream(values())
                        .filter(level -> known.contains(level.back) || known.contains(level.front))
                        .findFirst()
                        .orElse(null);
    }
}
