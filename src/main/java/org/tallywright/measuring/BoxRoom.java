package org.tallywright.measuring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;

/**
 * The square, plumb box that goes between two walls, from plane geometry. At every height that was read the walls stand half
 * a width to either side of a middle line; that line moves by the shift toward the front and by half the difference of the
 * leans toward the top. What goes in is the least place of the right wall less the greatest of the left, with the box at the
 * back and with it at the front, whichever is less: it has to pass both.
 *
 * <p>Every width that was read counts as within the height of the piece; a height at which none was read follows from the
 * leans. A lean is taken over the height of the piece, or of the opening where that is less. Two corners tell a width at the
 * front from that at the back, and the other way round. The bow of a side stands half way up, or at the top of a piece that
 * is no higher than that.
 */
final class BoxRoom {
    private static final List<Reading> BOWS = List.of(Reading.BOW_LEFT, Reading.BOW_RIGHT, Reading.BOW_SIDE_OVER);

    private final List<Reading> from = new ArrayList<>();
    private final int[] places = new int[Reading.values().length];
    private final Set<Reading> known;
    private final @Nullable Double depth;
    private final @Nullable Double height;
    private final List<Reading> depths;
    private final List<Reading> heights;

    /** @param depth of the piece, and its height; null where they are not known, for those of the opening */
    BoxRoom(Map<Reading, Length> readings, @Nullable Length depth, @Nullable Length height) {
        this.known = readings.keySet();
        this.depth = depth == null ? null : depth.inches().doubleValue();
        this.height = height == null ? null : height.inches().doubleValue();
        this.depths = known(Reading.Group.DEPTHS);
        this.heights = known(Reading.Group.HEIGHTS);
        from.addAll(known(Reading.Group.WIDTHS));
        if (depth != null || shift() == Shift.CORNERS) {
            from.addAll(depths);
        }
        from.addAll(shift().readings(known));
        if (leans()) {
            from.addAll(known(Reading.Group.PLUMB));
        }
        if (bows()) {
            from.addAll(known(BOWS));
        }
        if (leans() || bows()) {
            from.addAll(heights);
        }
        Arrays.fill(places, -1);
        from.forEach(reading -> places[reading.ordinal()] = from.indexOf(reading));
    }

    /** What the sums below take, in this order. */
    List<Reading> from() {
        return from;
    }

    /** Whether more is known of the walls than how far apart they are. */
    boolean isKnown() {
        return shift() != Shift.NONE || leans() || bows();
    }

    /** What would have to be read to be sure of the width. */
    Set<Unread> unread() {
        Set<Unread> unread = new java.util.TreeSet<>();
        if (shift() == Shift.NONE) {
            unread.add(Level.lowest(known) == null ? Unread.FRONT_AND_BACK : Unread.DIAGONALS);
        }
        boolean left = has(Reading.LEAN_LEFT) && has(Reading.LEAN_OVER);
        boolean right = has(Reading.LEAN_RIGHT) && has(Reading.LEAN_OVER);
        if (!left && !(right && widens())) {
            unread.add(Unread.LEAN_LEFT);
        }
        if (!right && !(left && widens())) {
            unread.add(Unread.LEAN_RIGHT);
        }
        return unread;
    }

    /** The width of the widest box. */
    double clear(double[] r) {
        Walls walls = new Walls(r);
        double share = walls.share();
        return Math.min(walls.between(0, share), walls.between(1 - share, 1));
    }

    /** How far the widest place beside the piece is wider than the box, with the piece at the back. */
    double gap(double[] r) {
        Walls walls = new Walls(r);
        return walls.widest(walls.share()) - clear(r);
    }

    private boolean leans() {
        return has(Reading.LEAN_OVER) && (has(Reading.LEAN_LEFT) || has(Reading.LEAN_RIGHT));
    }

    private boolean bows() {
        return has(Reading.BOW_SIDE_OVER) && (has(Reading.BOW_LEFT) || has(Reading.BOW_RIGHT));
    }

    /** Whether the widths tell how much the walls lean together. */
    private boolean widens() {
        return !heights.isEmpty()
                && (bothHeights(Level.FLOOR.back, Level.TOP.back) || bothHeights(Level.FLOOR.front, Level.TOP.front));
    }

    /** Whether widths were read at one end at all three heights. */
    private boolean readAllUp(boolean back) {
        return Arrays.stream(Level.values()).allMatch(level -> has(level.at(back)));
    }

    private boolean bothHeights(Reading floor, Reading top) {
        return has(floor) && has(top);
    }

    private Shift shift() {
        boolean pair = Level.lowest(known) != null;
        if (pair && has(Reading.DIAGONAL_BACK_LEFT) && has(Reading.DIAGONAL_BACK_RIGHT)) {
            return Shift.DIAGONALS;
        }
        boolean one =
                Shift.LEFT.stream().allMatch(this::has) || Shift.RIGHT.stream().allMatch(this::has);
        boolean enough = bothCorners() || pair && one;
        return enough && !depths.isEmpty() ? Shift.CORNERS : Shift.NONE;
    }

    private boolean bothCorners() {
        return Shift.LEFT.stream().allMatch(this::has) && Shift.RIGHT.stream().allMatch(this::has);
    }

    private boolean has(Reading reading) {
        return known.contains(reading);
    }

    private List<Reading> known(Reading.Group group) {
        return known(group.readings());
    }

    private List<Reading> known(List<Reading> readings) {
        return readings.stream().filter(known::contains).toList();
    }

    /** From what the way of the middle line toward the front is known. */
    private enum Shift {
        NONE,
        DIAGONALS,
        CORNERS;

        private static final List<Reading> LEFT =
                List.of(Reading.CORNER_LEFT_BACK, Reading.CORNER_LEFT_SIDE, Reading.CORNER_LEFT_ACROSS);
        private static final List<Reading> RIGHT =
                List.of(Reading.CORNER_RIGHT_BACK, Reading.CORNER_RIGHT_SIDE, Reading.CORNER_RIGHT_ACROSS);

        List<Reading> readings(Set<Reading> known) {
            Reading.Group group = this == DIAGONALS ? Reading.Group.DIAGONALS : Reading.Group.CORNERS;
            return this == NONE
                    ? List.of()
                    : group.readings().stream().filter(known::contains).toList();
        }
    }

    /** The walls as one set of readings has them. */
    private final class Walls {
        private final double[] r;
        private final double shift;
        private final double leanLeft;
        private final double leanRight;
        /** As a share of the height of the opening: where the bows below stand. */
        private final double bowAt;
        /** The same, of the height that the leans are taken over. */
        private final double bowUp;

        private final double bowLeft;
        private final double bowRight;

        private Walls(double[] r) {
            this.r = r;
            this.shift = shifted();
            double left = 0;
            double right = 0;
            if (leans()) {
                double over = at(Reading.LEAN_OVER);
                double opening = high(over);
                double spread = widens() ? spread() : Double.NaN;
                left = lean(Reading.LEAN_LEFT, Reading.LEAN_RIGHT, opening / over, spread);
                right = lean(Reading.LEAN_RIGHT, Reading.LEAN_LEFT, opening / over, spread);
                double tall = tall(opening);
                left *= tall;
                right *= tall;
            }
            leanLeft = left;
            leanRight = right;
            double tall = bows() ? tall(high(at(Reading.BOW_SIDE_OVER))) : 1;
            bowAt = Math.min(0.5, tall);
            bowUp = bowAt / tall;
            bowLeft = bow(Reading.BOW_LEFT, Reading.BOW_RIGHT);
            bowRight = bow(Reading.BOW_RIGHT, Reading.BOW_LEFT);
        }

        private double high(double over) {
            return heights.stream().mapToDouble(this::at).max().orElse(over);
        }

        private double tall(double opening) {
            return height == null ? 1 : Math.min(1, height / opening);
        }

        /** Of a wall whose bow was not read, what the widths leave half way up, or none. */
        private double bow(Reading wall, Reading other) {
            if (!bows()) {
                return 0;
            }
            if (has(wall)) {
                double over = at(Reading.BOW_SIDE_OVER);
                double run = heights.stream().mapToDouble(this::at).average().orElse(over);
                // An even curve, as OpeningSums takes it: at the middle the whole of it.
                return at(wall) * Math.pow(run / over, 2) * 4 * bowAt * (1 - bowAt);
            }
            if (readAllUp(true) || readAllUp(false)) {
                boolean back = readAllUp(true);
                double ends = (at(Level.FLOOR.at(back)) + at(Level.TOP.at(back))) / 2;
                return at(Level.MIDDLE.at(back)) - ends - bow(other, wall);
            }
            return 0;
        }

        private double at(Reading reading) {
            return r[places[reading.ordinal()]];
        }

        /** Over the height of the opening; of a wall that was not read, what the widths leave, or none. */
        private double lean(Reading wall, Reading other, double times, double spread) {
            if (has(wall)) {
                return at(wall) * times;
            }
            return Double.isNaN(spread) ? 0 : spread - at(other) * times;
        }

        private double spread() {
            return bothHeights(Level.FLOOR.back, Level.TOP.back)
                    ? at(Level.TOP.back) - at(Level.FLOOR.back)
                    : at(Level.TOP.front) - at(Level.FLOOR.front);
        }

        private double shifted() {
            Level level = Level.lowest(known);
            Shift by = shift();
            if (by == Shift.DIAGONALS && level != null) {
                return Geometry.shift(
                        at(level.back),
                        at(level.front),
                        at(Reading.DIAGONAL_BACK_LEFT),
                        at(Reading.DIAGONAL_BACK_RIGHT));
            }
            if (by != Shift.CORNERS) {
                return 0;
            }
            double half = level == null ? 0 : (at(level.front) - at(level.back)) / 2;
            boolean left = Shift.LEFT.stream().allMatch(BoxRoom.this::has);
            if (bothCorners()) {
                return (splay(Shift.RIGHT) - splay(Shift.LEFT)) / 2;
            }
            return left ? half - splay(Shift.LEFT) : splay(Shift.RIGHT) - half;
        }

        private double splay(List<Reading> corner) {
            return Geometry.splayOf(Geometry.corner(at(corner.get(0)), at(corner.get(1)), at(corner.get(2))), deep());
        }

        private double deep() {
            return depths.stream().mapToDouble(this::at).average().orElseThrow();
        }

        /** How much of the depth of the opening the piece takes. */
        private double share() {
            return depth == null || depths.isEmpty() ? 1 : Math.min(1, depth / deep());
        }

        /** Between the walls from one share of the depth to another. */
        private double between(double near, double far) {
            double left = Double.NEGATIVE_INFINITY;
            double right = Double.POSITIVE_INFINITY;
            for (Level level : Level.values()) {
                for (double out : new double[] {near, far}) {
                    double width = width(level, out);
                    if (!Double.isNaN(width)) {
                        double middle = shift * out + middle(level);
                        left = Math.max(left, middle - width / 2);
                        right = Math.min(right, middle + width / 2);
                    }
                }
            }
            return right - left;
        }

        /** How far the middle line is to the right at that height. */
        private double middle(Level level) {
            double leaning = (leanRight - leanLeft) / 2;
            return level == Level.MIDDLE && bows() ? leaning * bowUp + (bowRight - bowLeft) / 2 : leaning * level.up;
        }

        private double widest(double share) {
            double widest = 0;
            for (Level level : Level.values()) {
                for (double out : new double[] {0, share}) {
                    double width = width(level, out);
                    widest = Double.isNaN(width) ? widest : Math.max(widest, width);
                }
            }
            return widest;
        }

        /** Not a number at a height of which nothing is known. */
        private double width(Level level, double out) {
            if (has(level.back) || has(level.front)) {
                return readAt(level, out);
            }
            Level read = Level.read(known);
            if (read == null || !leans() && !bows()) {
                return Double.NaN;
            }
            if (level == Level.MIDDLE) {
                return bows() ? bowed(out) : Double.NaN;
            }
            double bow = read == Level.MIDDLE ? bowLeft + bowRight : 0;
            return width(read, out) - bow + (leanLeft + leanRight) * (level.up - read.up);
        }

        private double readAt(Level level, double out) {
            double opens = 0;
            if (has(level.back) && has(level.front)) {
                opens = at(level.front) - at(level.back);
            } else if (shift() == Shift.CORNERS && bothCorners()) {
                opens = splay(Shift.LEFT) + splay(Shift.RIGHT);
            }
            return has(level.back) ? at(level.back) + opens * out : at(level.front) - opens * (1 - out);
        }

        /** Where no width was read half way up: the straight walls there, and the bows of both. */
        private double bowed(double out) {
            double floor = width(Level.FLOOR, out);
            double top = width(Level.TOP, out);
            boolean read = has(Level.TOP.back) || has(Level.TOP.front);
            return floor + (top - floor) * (read ? bowAt : bowUp) + bowLeft + bowRight;
        }
    }
}
