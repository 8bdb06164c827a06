package org.tallywright.measuring.web;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.tallywright.measuring.Reading;
import org.tallywright.shared.Length;
import org.tallywright.web.FormReader;

/** Readings that cannot stand beside each other, refused beside the box to look at again. */
final class ReadingRules {
    private ReadingRules() {}

    static void check(Map<Reading, Length> readings, FormReader read) {
        corner(readings, read, Reading.CORNER_LEFT_BACK, Reading.CORNER_LEFT_SIDE, Reading.CORNER_LEFT_ACROSS);
        corner(readings, read, Reading.CORNER_RIGHT_BACK, Reading.CORNER_RIGHT_SIDE, Reading.CORNER_RIGHT_ACROSS);
        over(readings, read, Reading.LEAN_LEFT, Reading.LEAN_OVER, "the wall leaned");
        over(readings, read, Reading.LEAN_RIGHT, Reading.LEAN_OVER, "the wall leaned");
        over(readings, read, Reading.FLOOR_FALL, Reading.FLOOR_OVER, "the floor falls");
        over(readings, read, Reading.FLOOR_FRONT, Reading.FLOOR_FRONT_OVER, "the floor falls");
        over(readings, read, Reading.BOW_BACK, Reading.BOW_BACK_OVER, "the wall bows");
        over(readings, read, Reading.BOW_LEFT, Reading.BOW_SIDE_OVER, "the wall bows");
        over(readings, read, Reading.BOW_RIGHT, Reading.BOW_SIDE_OVER, "the wall bows");
        for (Reading diagonal : List.of(Reading.DIAGONAL_BACK_LEFT, Reading.DIAGONAL_BACK_RIGHT)) {
            longerThan(readings, read, diagonal, Reading.DEPTH_LEFT);
            longerThan(readings, read, diagonal, Reading.DEPTH_RIGHT);
        }
    }

    private static void corner(
            Map<Reading, Length> readings, FormReader read, Reading back, Reading side, Reading across) {
        long known = List.of(back, side, across).stream()
                .filter(readings::containsKey)
                .count();
        if (known == 0) {
            return;
        }
        for (Reading each : List.of(back, side, across)) {
            if (!readings.containsKey(each)) {
                read.refuse(each.box(), "A corner wants all three sides.");
            }
        }
        @Nullable Length a = readings.get(back);
        @Nullable Length b = readings.get(side);
        @Nullable Length c = readings.get(across);
        if (a != null
                && b != null
                && c != null
                && (c.compareTo(a.plus(b)) >= 0 || c.compareTo(a.minus(b)) <= 0 || c.compareTo(b.minus(a)) <= 0)) {
            read.refuse(across.box(), "These three sides make no corner; measure the way across again.");
        }
    }

    private static void over(Map<Reading, Length> readings, FormReader read, Reading off, Reading over, String what) {
        @Nullable Length by = readings.get(off);
        @Nullable Length run = readings.get(over);
        if (by == null) {
            return;
        }
        if (run == null) {
            read.refuse(over.box(), "Say over what length " + what + ".");
        } else if (Math.abs(by.units()) >= run.units()) {
            read.refuse(off.box(), "That is as much as the length it was read over; check both.");
        }
    }

    private static void longerThan(Map<Reading, Length> readings, FormReader read, Reading diagonal, Reading depth) {
        @Nullable Length across = readings.get(diagonal);
        @Nullable Length deep = readings.get(depth);
        if (across != null && deep != null && across.compareTo(deep) <= 0) {
            read.refuse(diagonal.box(), "A diagonal is longer than the depth; check both.");
        }
    }
}
