package org.tallywright.measuring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;

/**
 * Everything that follows from the readings of one opening, as far as they go. Wall faces are taken as straight between
 * two readings, but for a bow that was read. What the tape leaves open about each reading is carried through to first order;
 * for a least, a gap or what is clear it is drawn (ADR 0062).
 */
public final class OpeningSums {
    /** What a scribe strip is wider than the largest gap: common practice, no source. */
    public static final Length SPARE = Length.ofSixtyFourths(16);

    private final Map<Reading, Length> readings;
    private final double standard;
    private final @Nullable Length pieceDepth;
    private final @Nullable Length pieceHeight;
    private final List<Finding> found = new ArrayList<>();

    private OpeningSums(
            Map<Reading, Length> readings, Length goodTo, @Nullable Length pieceDepth, @Nullable Length pieceHeight) {
        this.readings = readings;
        this.standard = goodTo.inches().doubleValue() / 2;
        this.pieceDepth = pieceDepth;
        this.pieceHeight = pieceHeight;
    }

    /**
     * @param goodTo what a reading is good to, plus or minus, about 19 times in 20: twice its standard uncertainty
     * @param pieceDepth how deep the piece will be; null for as deep as the opening; likewise its height
     */
    public static List<Finding> of(
            Map<Reading, Length> readings, Length goodTo, @Nullable Length pieceDepth, @Nullable Length pieceHeight) {
        OpeningSums sums = new OpeningSums(readings, goodTo, pieceDepth, pieceHeight);
        sums.widths();
        sums.corners();
        sums.diagonals();
        sums.plumbAndLevel();
        sums.bows();
        sums.floor();
        return List.copyOf(sums.found);
    }

    /** What would have to be read to be sure of the width to build to. */
    public static Set<Unread> unread(Map<Reading, Length> readings) {
        return new BoxRoom(readings, null, null).unread();
    }

    private void widths() {
        List<Reading> widths = known(Reading.Group.WIDTHS);
        if (!widths.isEmpty()) {
            addBent(Sum.NARROWEST, widths, OpeningSums::least);
        }
        for (Level level : Level.values()) {
            add(level.splay, List.of(level.front, level.back), r -> r[0] - r[1]);
        }
        Level level = level();
        List<Reading> depths = known(Reading.Group.DEPTHS);
        if (level != null && !depths.isEmpty()) {
            splayed(level, depths);
        }
        box();
        List<Reading> heights = known(Reading.Group.HEIGHTS);
        if (!heights.isEmpty()) {
            addBent(Sum.LOWEST, heights, OpeningSums::least);
        }
    }

    private void splayed(Level level, List<Reading> depths) {
        List<Reading> from = Stream.concat(Stream.of(level.front, level.back), depths.stream())
                .toList();
        if (pieceDepth != null) {
            double deep = pieceDepth.inches().doubleValue();
            add(Sum.TAPER, from, r -> (r[0] - r[1]) * deep / meanFrom(r, 2));
        }
        add(Sum.ONE_WALL_ANGLE, from, r -> Geometry.cornerOf(r[0] - r[1], meanFrom(r, 2)));
        add(Sum.EACH_WALL_ANGLE, from, r -> Geometry.cornerOf((r[0] - r[1]) / 2, meanFrom(r, 2)));
    }

    /** The width to build to where more is known than the widths, and what then stands open beside the piece. */
    private void box() {
        BoxRoom box = new BoxRoom(readings, pieceDepth, pieceHeight);
        List<Reading> widths = known(Reading.Group.WIDTHS);
        if (!widths.isEmpty() && box.isKnown()) {
            addBent(Sum.CLEAR_WIDTH, box.from(), box::clear);
        }
        if (widths.size() < 2 && (widths.isEmpty() || !box.isKnown())) {
            return;
        }
        addBent(Sum.LARGEST_GAP, box.from(), box::gap);
        Finding gap = found.get(found.size() - 1);
        if (gap.sum() == Sum.LARGEST_GAP) {
            // Too narrow a strip is lost: two readings off by all they may be, or the gap's own doubt where it is more.
            double worst = Math.max(4 * standard, gap.figure().plusMinus());
            Reckoned strip = new Reckoned(
                    gap.figure().value() + worst + SPARE.inches().doubleValue(),
                    gap.figure().standard());
            found.add(new Finding(Sum.SCRIBE_STOCK, strip, box.from()));
        }
    }

    private void corners() {
        List<Reading> left = List.of(Reading.CORNER_LEFT_BACK, Reading.CORNER_LEFT_SIDE, Reading.CORNER_LEFT_ACROSS);
        List<Reading> right =
                List.of(Reading.CORNER_RIGHT_BACK, Reading.CORNER_RIGHT_SIDE, Reading.CORNER_RIGHT_ACROSS);
        add(Sum.CORNER_LEFT, left, r -> Geometry.corner(r[0], r[1], r[2]));
        add(Sum.CORNER_RIGHT, right, r -> Geometry.corner(r[0], r[1], r[2]));
        Level level = level();
        List<Reading> depths = known(Reading.Group.DEPTHS);
        if (level != null && !depths.isEmpty()) {
            List<Reading> all = Stream.of(left, right, List.of(level.front, level.back), depths)
                    .flatMap(List::stream)
                    .toList();
            add(
                    Sum.CORNER_CHECK,
                    all,
                    r -> Geometry.splayOf(Geometry.corner(r[0], r[1], r[2]), meanFrom(r, 8))
                            + Geometry.splayOf(Geometry.corner(r[3], r[4], r[5]), meanFrom(r, 8))
                            - (r[6] - r[7]));
        }
    }

    private void diagonals() {
        Level level = level();
        if (level == null) {
            return;
        }
        List<Reading> figure =
                List.of(level.back, level.front, Reading.DIAGONAL_BACK_LEFT, Reading.DIAGONAL_BACK_RIGHT);
        add(Sum.SQUARE_SHIFT, figure, r -> Geometry.shift(r[0], r[1], r[2], r[3]));
        List<Reading> depths = known(Reading.Group.DEPTHS);
        if (depths.isEmpty()) {
            return;
        }
        List<Reading> from = Stream.concat(figure.stream(), depths.stream()).toList();
        add(
                Sum.DIAGONAL_LEFT,
                from,
                r -> Geometry.cornerOf(Geometry.leftSplay(r[0], r[1], r[2], r[3]), meanFrom(r, 4)));
        add(
                Sum.DIAGONAL_RIGHT,
                from,
                r -> Geometry.cornerOf(Geometry.rightSplay(r[0], r[1], r[2], r[3]), meanFrom(r, 4)));
        add(Sum.DEPTH_CHECK, from, r -> Math.sqrt(Geometry.depthSquared(r[0], r[1], r[2], r[3])) - meanFrom(r, 4));
    }

    private void plumbAndLevel() {
        List<Reading> heights = known(Reading.Group.HEIGHTS);
        for (Reading lean : List.of(Reading.LEAN_LEFT, Reading.LEAN_RIGHT)) {
            Sum sum = lean == Reading.LEAN_LEFT ? Sum.LEAN_LEFT : Sum.LEAN_RIGHT;
            List<Reading> from = Stream.concat(Stream.of(lean, Reading.LEAN_OVER), heights.stream())
                    .toList();
            addBent(sum, from, r -> r.length == 2 ? r[0] : r[0] * highest(r) / r[1]);
        }
        List<Reading> widths = known(Reading.Group.WIDTHS);
        List<Reading> from = Stream.concat(Stream.of(Reading.FLOOR_FALL, Reading.FLOOR_OVER), widths.stream())
                .toList();
        add(Sum.FALL, from, OpeningSums::fallAcross);
    }

    private void bows() {
        List<Reading> back = List.of(Reading.BACK_FLOOR, Reading.BACK_MIDDLE, Reading.BACK_TOP);
        List<Reading> heights = Reading.Group.HEIGHTS.readings();
        bow(Sum.BOW_BACK, Sum.SCRIBE_BACK, Reading.BOW_BACK, Reading.BOW_BACK_OVER, back);
        bow(Sum.BOW_LEFT, Sum.SCRIBE_LEFT, Reading.BOW_LEFT, Reading.BOW_SIDE_OVER, heights);
        bow(Sum.BOW_RIGHT, Sum.SCRIBE_RIGHT, Reading.BOW_RIGHT, Reading.BOW_SIDE_OVER, heights);
    }

    /** An even curve, as far as one reading tells: the rise over a chord grows with the square of the chord. */
    private void bow(Sum bow, Sum strip, Reading read, Reading over, List<Reading> run) {
        List<Reading> from = Stream.concat(Stream.of(read, over), run.stream().filter(readings::containsKey))
                .toList();
        ToDoubleFunction<double[]> whole = r -> r.length == 2 ? r[0] : r[0] * Math.pow(meanFrom(r, 2) / r[1], 2);
        add(bow, from, whole);
        double worst = 2 * standard + SPARE.inches().doubleValue();
        addBent(strip, from, r -> Math.abs(whole.applyAsDouble(r)) + worst);
    }

    private void floor() {
        List<Reading> toFront = Stream.concat(
                        Stream.of(Reading.FLOOR_FRONT, Reading.FLOOR_FRONT_OVER),
                        pieceDepth == null ? known(Reading.Group.DEPTHS).stream() : Stream.of())
                .toList();
        ToDoubleFunction<double[]> front = r -> pieceDepth != null
                ? r[0] * pieceDepth.inches().doubleValue() / r[1]
                : r.length == 2 ? r[0] : r[0] * meanFrom(r, 2) / r[1];
        add(Sum.FALL_FRONT, toFront, front);
        List<Reading> across = Stream.concat(
                        Stream.of(Reading.FLOOR_FALL, Reading.FLOOR_OVER), known(Reading.Group.WIDTHS).stream())
                .toList();
        List<Reading> both = Stream.concat(across.stream(), toFront.stream()).toList();
        // A floor that is one plane: its highest and its lowest corner lie across from each other.
        addBent(
                Sum.LEVELLING,
                both,
                r -> Math.abs(fallAcross(Arrays.copyOfRange(r, 0, across.size())))
                        + Math.abs(front.applyAsDouble(Arrays.copyOfRange(r, across.size(), r.length))));
    }

    private static double fallAcross(double[] r) {
        return r.length == 2 ? r[0] : r[0] * meanFrom(r, 2) / r[1];
    }

    private static double highest(double[] readings) {
        return Arrays.stream(readings, 2, readings.length).max().orElseThrow();
    }

    private static double least(double[] readings) {
        return Arrays.stream(readings).min().orElseThrow();
    }

    private static double meanFrom(double[] readings, int first) {
        return Arrays.stream(readings, first, readings.length).average().orElseThrow();
    }

    private void add(Sum sum, List<Reading> from, ToDoubleFunction<double[]> figure) {
        add(sum, from, (values, each) -> Propagation.through(figure, values, each));
    }

    /** For a figure whose slope jumps where readings are alike. */
    private void addBent(Sum sum, List<Reading> from, ToDoubleFunction<double[]> figure) {
        add(sum, from, (values, each) -> Propagation.drawn(figure, values, each));
    }

    /** Nothing is added where a reading is missing or the readings fit no figure. */
    private void add(Sum sum, List<Reading> from, BiFunction<double[], double[], Reckoned> carried) {
        if (!has(from.toArray(Reading[]::new))) {
            return;
        }
        double[] values = from.stream()
                .mapToDouble(reading -> value(reading).inches().doubleValue())
                .toArray();
        double[] each = new double[values.length];
        Arrays.fill(each, standard);
        Reckoned reckoned = carried.apply(values, each);
        if (Double.isFinite(reckoned.value()) && Double.isFinite(reckoned.standard())) {
            found.add(new Finding(sum, reckoned, from));
        }
    }

    private Length value(Reading reading) {
        return readings.getOrDefault(reading, Length.ZERO);
    }

    private boolean has(Reading... all) {
        return Arrays.stream(all).allMatch(readings::containsKey);
    }

    private List<Reading> known(Reading.Group group) {
        return group.readings().stream().filter(readings::containsKey).toList();
    }

    private @Nullable Level level() {
        return Level.lowest(readings.keySet());
    }
}
