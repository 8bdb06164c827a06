package org.tallywright.measuring;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** One place of an opening where the tape, or the level and a rule, is read. Left and right are as seen from the front. */
public enum Reading {
    BACK_FLOOR(Group.WIDTHS),
    BACK_MIDDLE(Group.WIDTHS),
    BACK_TOP(Group.WIDTHS),
    FRONT_FLOOR(Group.WIDTHS),
    FRONT_MIDDLE(Group.WIDTHS),
    FRONT_TOP(Group.WIDTHS),
    DEPTH_LEFT(Group.DEPTHS),
    DEPTH_RIGHT(Group.DEPTHS),
    HEIGHT_LEFT(Group.HEIGHTS),
    HEIGHT_MIDDLE(Group.HEIGHTS),
    HEIGHT_RIGHT(Group.HEIGHTS),
    /** From the back left corner to the front right one. */
    DIAGONAL_BACK_LEFT(Group.DIAGONALS),
    /** From the back right corner to the front left one. */
    DIAGONAL_BACK_RIGHT(Group.DIAGONALS),
    CORNER_LEFT_BACK(Group.CORNERS),
    CORNER_LEFT_SIDE(Group.CORNERS),
    CORNER_LEFT_ACROSS(Group.CORNERS),
    CORNER_RIGHT_BACK(Group.CORNERS),
    CORNER_RIGHT_SIDE(Group.CORNERS),
    CORNER_RIGHT_ACROSS(Group.CORNERS),
    /** Above nothing: the wall stands back in the middle; below, it bulges into the opening. */
    BOW_BACK(Group.BOWS),
    /** The length of the string or straightedge that it was read from. */
    BOW_BACK_OVER(Group.BOWS),
    /** As that of the back, up the height of the wall. */
    BOW_LEFT(Group.BOWS),
    /** As the left one. */
    BOW_RIGHT(Group.BOWS),
    /** The height that the bows of the sides were read over. */
    BOW_SIDE_OVER(Group.BOWS),
    /** Above nothing: the top leans away from the opening, which is wider there. */
    LEAN_LEFT(Group.PLUMB),
    /** As the left one. */
    LEAN_RIGHT(Group.PLUMB),
    /** The height that the leans were read over. */
    LEAN_OVER(Group.PLUMB),
    /** Above nothing: the floor is lower at the right. */
    FLOOR_FALL(Group.LEVEL),
    /** The run that the fall was read over. */
    FLOOR_OVER(Group.LEVEL),
    /** Above nothing: the floor is lower at the front. */
    FLOOR_FRONT(Group.LEVEL),
    /** The run that it was read over. */
    FLOOR_FRONT_OVER(Group.LEVEL);

    /** Readings that stand together in the form. */
    public enum Group {
        WIDTHS,
        DEPTHS,
        HEIGHTS,
        DIAGONALS,
        CORNERS,
        BOWS,
        PLUMB,
        LEVEL;

        public List<Reading> readings() {
            return Arrays.stream(Reading.values())
                    .filter(reading -> reading.group == this)
                    .toList();
        }
    }

    private final Group group;

    Reading(Group group) {
        this.group = group;
    }

    public Group group() {
        return group;
    }

    /** May lie on either side of its mark. */
    public boolean isSigned() {
        return switch (this) {
            case LEAN_LEFT, LEAN_RIGHT, FLOOR_FALL, FLOOR_FRONT, BOW_BACK, BOW_LEFT, BOW_RIGHT -> true;
            default -> false;
        };
    }

    /** {@code back_floor}, as the database keeps it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** {@code backFloor}, as the form names its box. */
    public String box() {
        StringBuilder out = new StringBuilder();
        for (String word : code().split("_")) {
            out.append(out.isEmpty() ? word : Character.toUpperCase(word.charAt(0)) + word.substring(1));
        }
        return out.toString();
    }

    static Reading of(String code) {
        return valueOf(code.toUpperCase(Locale.ROOT));
    }
}
