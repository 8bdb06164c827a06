package org.tallywright.measuring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tallywright.measuring.Reading.BACK_FLOOR;
import static org.tallywright.measuring.Reading.BACK_MIDDLE;
import static org.tallywright.measuring.Reading.BACK_TOP;
import static org.tallywright.measuring.Reading.BOW_BACK;
import static org.tallywright.measuring.Reading.BOW_BACK_OVER;
import static org.tallywright.measuring.Reading.BOW_LEFT;
import static org.tallywright.measuring.Reading.BOW_SIDE_OVER;
import static org.tallywright.measuring.Reading.CORNER_LEFT_ACROSS;
import static org.tallywright.measuring.Reading.CORNER_LEFT_BACK;
import static org.tallywright.measuring.Reading.CORNER_LEFT_SIDE;
import static org.tallywright.measuring.Reading.CORNER_RIGHT_ACROSS;
import static org.tallywright.measuring.Reading.CORNER_RIGHT_BACK;
import static org.tallywright.measuring.Reading.CORNER_RIGHT_SIDE;
import static org.tallywright.measuring.Reading.DEPTH_LEFT;
import static org.tallywright.measuring.Reading.DEPTH_RIGHT;
import static org.tallywright.measuring.Reading.DIAGONAL_BACK_LEFT;
import static org.tallywright.measuring.Reading.DIAGONAL_BACK_RIGHT;
import static org.tallywright.measuring.Reading.FLOOR_FALL;
import static org.tallywright.measuring.Reading.FLOOR_FRONT;
import static org.tallywright.measuring.Reading.FLOOR_FRONT_OVER;
import static org.tallywright.measuring.Reading.FLOOR_OVER;
import static org.tallywright.measuring.Reading.FRONT_FLOOR;
import static org.tallywright.measuring.Reading.FRONT_TOP;
import static org.tallywright.measuring.Reading.HEIGHT_LEFT;
import static org.tallywright.measuring.Reading.LEAN_LEFT;
import static org.tallywright.measuring.Reading.LEAN_OVER;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;

/** The sums of an opening; examples by hand from plane geometry, and the tape's doubt against a simulation. */
class OpeningSumsTest {
    private static final Length GOOD_TO = inches("1/32");

    @Test
    void readsTheSplayAndTheCornersOfAnAlcove() {
        Map<Reading, Length> alcove =
                of(BACK_FLOOR, "61 3/8", FRONT_FLOOR, "62 1/16", DEPTH_LEFT, "24", DEPTH_RIGHT, "24");
        List<Finding> found = sums(alcove, GOOD_TO, inches("15"));
        assertThat(value(found, Sum.SPLAY_FLOOR)).isCloseTo(0.6875, within(1e-9));
        assertThat(value(found, Sum.ONE_WALL_ANGLE)).isCloseTo(91.64, within(0.005));
        assertThat(value(found, Sum.EACH_WALL_ANGLE)).isCloseTo(90.8206, within(0.0005));
        assertThat(value(found, Sum.TAPER)).isCloseTo(0.4297, within(0.00005));
        // Two readings each good to 1/32: root of the squares.
        assertThat(plusMinus(found, Sum.SPLAY_FLOOR)).isCloseTo(Math.sqrt(2) / 32, within(1e-6));
        assertThat(plusMinus(found, Sum.ONE_WALL_ANGLE)).isCloseTo(0.105, within(0.001));
        // 7/16 over the depth of the piece, both readings at their worst, and a quarter to plane away.
        assertThat(value(found, Sum.SCRIBE_STOCK)).isCloseTo(0.4297 + 2.0 / 32 + 0.25, within(0.0001));
    }

    @Test
    void readsACornerFromThreeSides() {
        List<Finding> found =
                sums(of(CORNER_LEFT_BACK, "36", CORNER_LEFT_SIDE, "48", CORNER_LEFT_ACROSS, "60 1/2"), GOOD_TO, null);
        assertThat(value(found, Sum.CORNER_LEFT)).isCloseTo(91.00, within(0.005));
        // By hand: c / (a b sin C) for c, the cosine rule's other slopes for a and b.
        double a = 36, b = 48, c = 60.5, sine = Math.sin(Math.toRadians(value(found, Sum.CORNER_LEFT)));
        double byC = c / (a * b * sine);
        double byA = -(a * a - b * b + c * c) / (2 * a * a * b * sine);
        double byB = -(b * b - a * a + c * c) / (2 * a * b * b * sine);
        assertThat(plusMinus(found, Sum.CORNER_LEFT))
                .isCloseTo(Math.toDegrees(Math.sqrt(byA * byA + byB * byB + byC * byC)) / 32, within(1e-5));
        assertThat(Geometry.corner(3, 4, 5)).isCloseTo(90, within(1e-12));
        assertThat(Geometry.isCorner(3, 4, 7)).isFalse();
        assertThat(Geometry.isCorner(3, 4, 1)).isFalse();
    }

    @Test
    void readsDiagonals() {
        // Back 0..60, front line 24 out from 1 left of the back corner to 61 1/2: left wall out 1, right wall out 1.5.
        double first = Math.hypot(61.5, 24);
        double second = Math.hypot(61, 24);
        assertThat(Geometry.leftSplay(60, 62.5, first, second)).isCloseTo(1, within(1e-9));
        assertThat(Geometry.rightSplay(60, 62.5, first, second)).isCloseTo(1.5, within(1e-9));
        assertThat(Geometry.depthSquared(60, 62.5, first, second)).isCloseTo(576, within(1e-6));
        List<Finding> square = sums(
                of(
                        BACK_FLOOR,
                        "32",
                        FRONT_FLOOR,
                        "32",
                        DEPTH_LEFT,
                        "24",
                        DIAGONAL_BACK_LEFT,
                        "40",
                        DIAGONAL_BACK_RIGHT,
                        "40"),
                GOOD_TO,
                null);
        assertThat(value(square, Sum.SQUARE_SHIFT)).isZero();
        assertThat(value(square, Sum.DIAGONAL_LEFT)).isEqualTo(90);
        assertThat(value(square, Sum.DIAGONAL_RIGHT)).isEqualTo(90);
        assertThat(value(square, Sum.DEPTH_CHECK)).isCloseTo(0, within(1e-9));
        List<Finding> wrong = sums(
                of(
                        BACK_FLOOR,
                        "32",
                        FRONT_FLOOR,
                        "32",
                        DEPTH_LEFT,
                        "24",
                        DIAGONAL_BACK_LEFT,
                        "40 1/2",
                        DIAGONAL_BACK_RIGHT,
                        "40 1/2"),
                GOOD_TO,
                null);
        assertThat(figure(wrong, Sum.DEPTH_CHECK).isBeyondDoubt()).isTrue();
        assertThat(figure(square, Sum.DEPTH_CHECK).isBeyondDoubt()).isFalse();
    }

    @Test
    void comparesCornersWithWidths() {
        Map<Reading, Length> room = of(
                BACK_FLOOR,
                "60",
                FRONT_FLOOR,
                "60",
                DEPTH_LEFT,
                "24",
                CORNER_LEFT_BACK,
                "36",
                CORNER_LEFT_SIDE,
                "48",
                CORNER_LEFT_ACROSS,
                "60 1/2");
        room.putAll(of(CORNER_RIGHT_BACK, "36", CORNER_RIGHT_SIDE, "48", CORNER_RIGHT_ACROSS, "60"));
        Reckoned check = figure(sums(room, GOOD_TO, null), Sum.CORNER_CHECK);
        assertThat(check.value())
                .isCloseTo(24 * Math.tan(Math.toRadians(Geometry.corner(36, 48, 60.5) - 90)), within(1e-6));
        assertThat(check.isBeyondDoubt()).isTrue();
    }

    @Test
    void carriesPlumbAndLevelToTheWholeOpening() {
        Map<Reading, Length> wall = of(LEAN_LEFT, "3/8", LEAN_OVER, "32", HEIGHT_LEFT, "96");
        assertThat(value(sums(wall, GOOD_TO, null), Sum.LEAN_LEFT)).isCloseTo(1.125, within(1e-9));
        Map<Reading, Length> floor = of(FLOOR_FALL, "3/8", FLOOR_OVER, "120", BACK_FLOOR, "72");
        assertThat(value(sums(floor, GOOD_TO, null), Sum.FALL)).isCloseTo(0.225, within(1e-9));
        floor.remove(BACK_FLOOR);
        assertThat(value(sums(floor, GOOD_TO, null), Sum.FALL)).isCloseTo(0.375, within(1e-9));
    }

    /** 3/16 over 96 along a wall of 72: the square of three quarters, .5625 of it. The strip: that, the reading, a quarter. */
    @Test
    void carriesABowToTheWallAndToItsScribeStrip() {
        Map<Reading, Length> wall = of(BOW_BACK, "-3/16", BOW_BACK_OVER, "96", BACK_FLOOR, "71", BACK_TOP, "73");
        List<Finding> found = OpeningSums.of(wall, GOOD_TO, null, null);
        assertThat(value(found, Sum.BOW_BACK)).isCloseTo(-0.5625 * 0.1875, within(1e-9));
        assertThat(value(found, Sum.SCRIBE_BACK)).isCloseTo(0.5625 * 0.1875 + 1 / 32.0 + 0.25, within(1e-9));
        // By hand: the slope to the bow is .5625, to the length 2 x bow / length, to each width bow / width.
        double bow = 0.5625 * 0.1875;
        double byWidth = bow / 72;
        double byOver = 2 * bow / 96;
        assertThat(plusMinus(found, Sum.BOW_BACK))
                .isCloseTo(Math.sqrt(0.5625 * 0.5625 + byOver * byOver + 2 * byWidth * byWidth) / 32, within(1e-6));
        assertThat(value(OpeningSums.of(of(BOW_LEFT, "1/4", BOW_SIDE_OVER, "48"), GOOD_TO, null, null), Sum.BOW_LEFT))
                .isEqualTo(0.25);
    }

    /** 3/8 in 120 over 72 across is .225; 1/4 in 30 over a piece 24 deep is .2 the other way: corners .425 apart. */
    @Test
    void findsHowFarTheHighestCornerOfTheFloorIsOverTheLowest() {
        Map<Reading, Length> floor =
                of(FLOOR_FALL, "3/8", FLOOR_OVER, "120", BACK_FLOOR, "72", FLOOR_FRONT, "-1/4", FLOOR_FRONT_OVER, "30");
        List<Finding> found = OpeningSums.of(floor, GOOD_TO, inches("24"), null);
        assertThat(value(found, Sum.FALL_FRONT)).isCloseTo(-0.2, within(1e-9));
        assertThat(value(found, Sum.LEVELLING)).isCloseTo(0.425, within(1e-9));
        double across = 0.6 / 32;
        double front = 0.8 / 32;
        // Away from a level floor the figure is straight: root of the squares, the runs' share is below a thousandth.
        assertThat(plusMinus(found, Sum.LEVELLING))
                .isCloseTo(Math.sqrt(across * across + front * front), within(0.0015));
    }

    @Test
    void findsTheNarrowestAndTheLargestGap() {
        Map<Reading, Length> room =
                of(BACK_FLOOR, "60", FRONT_FLOOR, "60 1/2", BACK_TOP, "60 1/4", FRONT_TOP, "59 3/4", DEPTH_LEFT, "24");
        List<Finding> found = sums(room, GOOD_TO, inches("12"));
        assertThat(value(found, Sum.NARROWEST)).isEqualTo(59.75);
        // At 12 deep the widths are 60, 60 1/4, 60 1/4 and 60; the piece is 59 3/4.
        assertThat(value(found, Sum.LARGEST_GAP)).isCloseTo(0.5, within(1e-9));
        assertThat(value(sums(room, GOOD_TO, null), Sum.LARGEST_GAP)).isCloseTo(0.75, within(1e-9));
    }

    /** Built to the front, which lies beyond the piece, all of the difference stands open at the back. */
    @Test
    void leavesTheGapThatThePieceIsBuiltFor() {
        List<Finding> closing = sums(of(BACK_FLOOR, "61", FRONT_FLOOR, "60", DEPTH_LEFT, "24"), GOOD_TO, inches("12"));
        assertThat(value(closing, Sum.NARROWEST)).isEqualTo(60);
        assertThat(value(closing, Sum.LARGEST_GAP)).isCloseTo(1, within(1e-9));
        // Both readings at their worst, and a quarter to plane away.
        assertThat(value(closing, Sum.SCRIBE_STOCK)).isCloseTo(1 + 2.0 / 32 + 0.25, within(1e-9));
    }

    @Test
    void countsAWidthThatWasReadAtOneEndOnly() {
        List<Finding> waist = sums(of(BACK_FLOOR, "60", FRONT_FLOOR, "60", BACK_MIDDLE, "59"), GOOD_TO, inches("12"));
        assertThat(value(waist, Sum.NARROWEST)).isEqualTo(59);
        assertThat(value(waist, Sum.LARGEST_GAP)).isCloseTo(1, within(1e-9));
        List<Finding> backs = sums(of(BACK_FLOOR, "60", BACK_TOP, "61"), GOOD_TO, null);
        assertThat(value(backs, Sum.LARGEST_GAP)).isCloseTo(1, within(1e-9));
    }

    @Test
    void saysNothingOfWhatWasNotRead() {
        assertThat(sums(Map.of(), GOOD_TO, null)).isEmpty();
        assertThat(sums(of(BACK_FLOOR, "60"), GOOD_TO, null))
                .extracting(Finding::sum)
                .containsExactly(Sum.NARROWEST);
    }

    /** Ten thousand alcoves measured with a tape of that doubt spread as far as the first order says, within 3 percent. */
    @Test
    void carriesTheTapeAsASimulationDoes() {
        double[] read = {61.375, 62.0625, 66.2, 66.4, 24};
        double[] standard = {1 / 64.0, 1 / 64.0, 1 / 64.0, 1 / 64.0, 1 / 64.0};
        java.util.function.ToDoubleFunction<double[]> angle =
                r -> Geometry.cornerOf(Geometry.leftSplay(r[0], r[1], r[2], r[3]), r[4]);
        Random random = new Random(20261125);
        double sum = 0;
        double squares = 0;
        int tries = 40_000;
        for (int n = 0; n < tries; n++) {
            double[] once = read.clone();
            for (int k = 0; k < once.length; k++) {
                once[k] += standard[k] * random.nextGaussian();
            }
            double value = angle.applyAsDouble(once);
            sum += value;
            squares += value * value;
        }
        double mean = sum / tries;
        double spread = Math.sqrt(squares / tries - mean * mean);
        Reckoned figure = Propagation.through(angle, read, standard);
        assertThat(figure.value()).isCloseTo(mean, within(0.002));
        assertThat(figure.standard()).isCloseTo(spread, within(spread * 0.03));
    }

    private static List<Finding> sums(Map<Reading, Length> readings, Length goodTo, @Nullable Length depth) {
        return OpeningSums.of(readings, goodTo, depth, null);
    }

    private static Reckoned figure(List<Finding> found, Sum sum) {
        return found.stream()
                .filter(f -> f.sum() == sum)
                .findFirst()
                .orElseThrow()
                .figure();
    }

    private static double value(List<Finding> found, Sum sum) {
        return figure(found, sum).value();
    }

    private static double plusMinus(List<Finding> found, Sum sum) {
        return figure(found, sum).plusMinus();
    }

    private static Map<Reading, Length> of(Object... pairs) {
        Map<Reading, Length> readings = new EnumMap<>(Reading.class);
        for (int n = 0; n < pairs.length; n += 2) {
            readings.put((Reading) pairs[n], inches((String) pairs[n + 1]));
        }
        return readings;
    }

    private static Length inches(@Nullable String typed) {
        return Length.parseSigned(typed == null ? "" : typed, Units.IMPERIAL);
    }
}
