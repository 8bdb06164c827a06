package org.tallywright.measuring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tallywright.measuring.Reading.BACK_FLOOR;
import static org.tallywright.measuring.Reading.BACK_MIDDLE;
import static org.tallywright.measuring.Reading.BACK_TOP;
import static org.tallywright.measuring.Reading.BOW_LEFT;
import static org.tallywright.measuring.Reading.BOW_RIGHT;
import static org.tallywright.measuring.Reading.BOW_SIDE_OVER;
import static org.tallywright.measuring.Reading.CORNER_LEFT_ACROSS;
import static org.tallywright.measuring.Reading.CORNER_LEFT_BACK;
import static org.tallywright.measuring.Reading.CORNER_LEFT_SIDE;
import static org.tallywright.measuring.Reading.CORNER_RIGHT_ACROSS;
import static org.tallywright.measuring.Reading.CORNER_RIGHT_BACK;
import static org.tallywright.measuring.Reading.CORNER_RIGHT_SIDE;
import static org.tallywright.measuring.Reading.DEPTH_LEFT;
import static org.tallywright.measuring.Reading.DIAGONAL_BACK_LEFT;
import static org.tallywright.measuring.Reading.DIAGONAL_BACK_RIGHT;
import static org.tallywright.measuring.Reading.FRONT_FLOOR;
import static org.tallywright.measuring.Reading.FRONT_TOP;
import static org.tallywright.measuring.Reading.HEIGHT_LEFT;
import static org.tallywright.measuring.Reading.LEAN_LEFT;
import static org.tallywright.measuring.Reading.LEAN_OVER;
import static org.tallywright.measuring.Reading.LEAN_RIGHT;

import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.tallywright.Draw;
import org.tallywright.Tries;
import org.tallywright.shared.Length;

/** Skewed and leaning walls; by hand from plane geometry, and against a box pushed through drawn walls. */
class BoxRoomTest {
    private static final Length GOOD_TO = inches(1 / 32.0);

    /** 38 1/2 wide at both ends, the front shifted by 6 1/2: the diagonals are those of 24 by 45 and of 24 by 32. */
    private static Map<Reading, Length> skewed() {
        return of(
                BACK_FLOOR,
                38.5,
                FRONT_FLOOR,
                38.5,
                DEPTH_LEFT,
                24.0,
                DIAGONAL_BACK_LEFT,
                51.0,
                DIAGONAL_BACK_RIGHT,
                40.0);
    }

    @Test
    void aSquareBoxLosesTheShift() {
        assertThat(value(skewed(), Sum.NARROWEST, null, null)).isEqualTo(38.5);
        assertThat(value(skewed(), Sum.CLEAR_WIDTH, null, null)).isCloseTo(32, within(1e-9));
        assertThat(value(skewed(), Sum.LARGEST_GAP, null, null)).isCloseTo(6.5, within(1e-9));
        // Half as deep, half the shift.
        assertThat(value(skewed(), Sum.CLEAR_WIDTH, 12.0, null)).isCloseTo(35.25, within(1e-9));
        assertThat(value(skewed(), Sum.LARGEST_GAP, 12.0, null)).isCloseTo(3.25, within(1e-9));
        // The common case: 60 wide, 24 deep, out by 1.
        Map<Reading, Length> bay = of(BACK_FLOOR, 60.0, FRONT_FLOOR, 60.0, DEPTH_LEFT, 24.0);
        bay.putAll(of(DIAGONAL_BACK_LEFT, Math.hypot(61, 24), DIAGONAL_BACK_RIGHT, Math.hypot(59, 24)));
        assertThat(value(bay, Sum.CLEAR_WIDTH, null, null)).isCloseTo(59, within(1e-3));
        assertThat(value(bay, Sum.SCRIBE_STOCK, null, null)).isCloseTo(1 + 2 / 32.0 + 0.25, within(0.01));
    }

    /** b / 2 + f / 2 - e, with e = (p2 - q2) / 2 (b + f): the slopes by hand. */
    @Test
    void carriesTheDiagonalsIntoTheClearWidth() {
        double byWidth = 0.5 + 6.5 / 77;
        double variance = 2 * byWidth * byWidth + Math.pow(51 / 77.0, 2) + Math.pow(40 / 77.0, 2);
        Reckoned clear = figure(skewed(), Sum.CLEAR_WIDTH, null, null);
        assertThat(clear.plusMinus()).isCloseTo(Math.sqrt(variance) / 32, within(1e-5));
    }

    @Test
    void takesTheShiftFromCornersAsWell() {
        Map<Reading, Length> room = of(BACK_FLOOR, 60.0, FRONT_FLOOR, 60.0, DEPTH_LEFT, 24.0);
        room.putAll(of(CORNER_LEFT_BACK, 36.0, CORNER_LEFT_SIDE, 48.0, CORNER_LEFT_ACROSS, 59.5));
        double in = 24 * Math.tan(Math.toRadians(90 - Geometry.corner(36, 48, 59.5)));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isCloseTo(60 - in, within(1e-9));
        room.putAll(of(CORNER_RIGHT_BACK, 36.0, CORNER_RIGHT_SIDE, 48.0, CORNER_RIGHT_ACROSS, 60.5));
        double out = 24 * Math.tan(Math.toRadians(Geometry.corner(36, 48, 60.5) - 90));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isCloseTo(60 - (in + out) / 2, within(1e-9));
        // The right corner alone: its wall runs out, so the left one runs in.
        room.keySet().removeAll(java.util.List.of(CORNER_LEFT_BACK, CORNER_LEFT_SIDE, CORNER_LEFT_ACROSS));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isCloseTo(60 - out, within(1e-9));
        room.remove(DEPTH_LEFT);
        assertThat(OpeningSums.of(room, GOOD_TO, null, null))
                .extracting(Finding::sum)
                .doesNotContain(Sum.CLEAR_WIDTH);
    }

    /** Both walls close by a = 24 tan(90 - 89.01 degrees); whichever end was read, the front is less by both. */
    @Test
    void twoCornersTellTheWidthThatWasNotRead() {
        Map<Reading, Length> corners = of(DEPTH_LEFT, 24.0);
        corners.putAll(of(CORNER_LEFT_BACK, 36.0, CORNER_LEFT_SIDE, 48.0, CORNER_LEFT_ACROSS, 59.5));
        corners.putAll(of(CORNER_RIGHT_BACK, 36.0, CORNER_RIGHT_SIDE, 48.0, CORNER_RIGHT_ACROSS, 59.5));
        double in = 24 * Math.tan(Math.toRadians(90 - Geometry.corner(36, 48, 59.5)));
        Map<Reading, Length> room = new EnumMap<>(corners);
        room.putAll(of(BACK_FLOOR, 48.0));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null))
                .isCloseTo(47.17, within(0.005))
                .isCloseTo(48 - 2 * in, within(1e-9));
        // Half as deep, it has to pass the front all the same.
        assertThat(value(room, Sum.CLEAR_WIDTH, 12.0, null)).isCloseTo(48 - 2 * in, within(1e-9));
        assertThat(value(room, Sum.LARGEST_GAP, null, null)).isCloseTo(2 * in, within(1e-9));
        Map<Reading, Length> atFront = new EnumMap<>(corners);
        atFront.putAll(of(FRONT_FLOOR, 48.0));
        assertThat(value(atFront, Sum.CLEAR_WIDTH, null, null)).isCloseTo(48, within(1e-9));
        assertThat(value(atFront, Sum.LARGEST_GAP, null, null)).isCloseTo(2 * in, within(1e-9));
    }

    @Test
    void aBulgeHalfWayUpTakesItsShare() {
        Map<Reading, Length> room = of(BACK_FLOOR, 48.0, BACK_TOP, 48.0, BOW_LEFT, -0.5, BOW_SIDE_OVER, 96.0);
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isCloseTo(47.5, within(1e-9));
        assertThat(value(room, Sum.LARGEST_GAP, null, null)).isCloseTo(0.5, within(1e-9));
        // The other wall standing back gives nothing: it holds at its ends.
        room.putAll(of(BOW_RIGHT, 0.5));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isCloseTo(47.5, within(1e-9));
        room.putAll(of(BOW_RIGHT, -0.25));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isCloseTo(47.25, within(1e-9));
        // A quarter as high as the walls: 4 x 1/4 x 3/4 of the bow at its top.
        assertThat(value(room, Sum.CLEAR_WIDTH, null, 24.0)).isCloseTo(48 - 0.75 * 0.75, within(1e-9));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, 48.0)).isCloseTo(47.25, within(1e-9));
        // Read over half the height, four times as much over the whole.
        room.putAll(of(BOW_SIDE_OVER, 48.0, HEIGHT_LEFT, 96.0));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isCloseTo(45, within(1e-9));
    }

    @Test
    void wallsThatStandBackTakeNothing() {
        Map<Reading, Length> room = of(BACK_FLOOR, 48.0, BOW_LEFT, 0.5, BOW_RIGHT, 0.5, BOW_SIDE_OVER, 96.0);
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isEqualTo(48);
        assertThat(value(room, Sum.LARGEST_GAP, null, null)).isCloseTo(1, within(1e-9));
        // Read only half way up, the ends are narrower.
        room.remove(BACK_FLOOR);
        room.putAll(of(BACK_MIDDLE, 48.0));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isCloseTo(47, within(1e-9));
    }

    /** As wide half way up as at the ends, so the other wall stands back; the box still has to pass the bulge. */
    @Test
    void aWidthReadBesideTheBulgeTellsOfTheOtherWall() {
        Map<Reading, Length> room = of(BACK_FLOOR, 48.0, BACK_MIDDLE, 48.0, BACK_TOP, 48.0, BOW_SIDE_OVER, 96.0);
        room.putAll(of(BOW_LEFT, -0.5));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isCloseTo(47.5, within(1e-9));
        room.putAll(of(BACK_MIDDLE, 47.5));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isCloseTo(47.5, within(1e-9));
    }

    @Test
    void takesTheLeansOverTheHeight() {
        Map<Reading, Length> room = of(BACK_FLOOR, 60.0, FRONT_FLOOR, 60.0, LEAN_OVER, 32.0, HEIGHT_LEFT, 96.0);
        room.putAll(of(LEAN_LEFT, -0.375, LEAN_RIGHT, 0.375));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isCloseTo(58.875, within(1e-9));
        assertThat(value(room, Sum.LARGEST_GAP, null, null)).isCloseTo(1.125, within(1e-9));
        // A seat of 16 meets a sixth of it.
        assertThat(value(room, Sum.CLEAR_WIDTH, null, 16.0)).isCloseTo(60 - 1.125 / 6, within(1e-9));
        room.putAll(of(LEAN_LEFT, 0.375));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isEqualTo(60);
        assertThat(value(room, Sum.LARGEST_GAP, null, null)).isCloseTo(2.25, within(1e-9));
        // One wall plumb as far as is known; the other leans in.
        room.remove(LEAN_LEFT);
        room.putAll(of(LEAN_RIGHT, -0.375));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isCloseTo(58.875, within(1e-9));
        // As wide at the top, so the other leans out with it.
        room.putAll(of(BACK_TOP, 60.0));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isCloseTo(58.875, within(1e-9));
        assertThat(OpeningSums.unread(room)).containsExactly(Unread.DIAGONALS);
    }

    @Test
    void losesNothingWhereOneWallTakesTheSplay() {
        Map<Reading, Length> room = of(BACK_FLOOR, 60.0, FRONT_FLOOR, 62.0, DEPTH_LEFT, 24.0);
        room.putAll(of(DIAGONAL_BACK_LEFT, Math.hypot(62, 24), DIAGONAL_BACK_RIGHT, Math.hypot(60, 24)));
        assertThat(value(room, Sum.CLEAR_WIDTH, null, null)).isCloseTo(60, within(1e-3));
    }

    @Test
    void saysWhatWasNotRead() {
        assertThat(OpeningSums.unread(of(BACK_FLOOR, 60.0)))
                .containsExactly(Unread.FRONT_AND_BACK, Unread.LEAN_LEFT, Unread.LEAN_RIGHT);
        assertThat(OpeningSums.unread(of(BACK_FLOOR, 60.0, FRONT_FLOOR, 60.0, LEAN_LEFT, 0.0, LEAN_OVER, 48.0)))
                .containsExactly(Unread.DIAGONALS, Unread.LEAN_RIGHT);
        Map<Reading, Length> all = skewed();
        all.putAll(of(LEAN_LEFT, 0.0, LEAN_RIGHT, 0.0, LEAN_OVER, 48.0));
        assertThat(OpeningSums.unread(all)).isEmpty();
    }

    /** Walls drawn, read exactly, and a box pushed through them in small steps. */
    @Test
    void isTheBoxThatGoesThroughDrawnWalls() {
        Tries.of(200, BoxRoomTest::pushed);
    }

    private static void pushed(Draw draw) {
        double back = draw.between(2000, 9000) / 100.0;
        double deep = draw.between(1000, 4000) / 100.0;
        double left = draw.between(-300, 300) / 100.0;
        double right = draw.between(-300, 300) / 100.0;
        double leanLeft = draw.between(-200, 200) / 100.0;
        double leanRight = draw.between(-200, 200) / 100.0;
        double piece = Math.min(deep, draw.between(500, 4000) / 100.0);
        double front = back + left + right;
        Map<Reading, Length> read = of(BACK_FLOOR, back, FRONT_FLOOR, front, DEPTH_LEFT, deep, HEIGHT_LEFT, 96.0);
        read.putAll(of(
                DIAGONAL_BACK_LEFT,
                Math.hypot(back + right, deep),
                DIAGONAL_BACK_RIGHT,
                Math.hypot(back + left, deep)));
        read.putAll(of(LEAN_LEFT, leanLeft, LEAN_RIGHT, leanRight, LEAN_OVER, 96.0));
        if (draw.coin()) {
            read.putAll(of(BACK_TOP, back + leanLeft + leanRight, FRONT_TOP, front + leanLeft + leanRight));
        }
        double least = Double.MAX_VALUE;
        for (int step = 0; step <= 20; step++) {
            double at = (deep - piece) * step / 20;
            double from = -Double.MAX_VALUE;
            double to = Double.MAX_VALUE;
            for (int part = 0; part <= 20; part++) {
                double out = (at + piece * part / 20) / deep;
                for (int up = 0; up <= 1; up++) {
                    from = Math.max(from, -left * out - leanLeft * up);
                    to = Math.min(to, back + right * out + leanRight * up);
                }
            }
            least = Math.min(least, to - from);
        }
        assertThat(value(read, Sum.CLEAR_WIDTH, piece, null)).isCloseTo(least, within(0.002));
        double widest = Math.max(back, back + (left + right) * piece / deep) + Math.max(0, leanLeft + leanRight);
        assertThat(value(read, Sum.LARGEST_GAP, piece, null)).isCloseTo(widest - least, within(0.004));
    }

    private static Reckoned figure(Map<Reading, Length> read, Sum sum, @Nullable Double deep, @Nullable Double tall) {
        return OpeningSums.of(read, GOOD_TO, deep == null ? null : inches(deep), tall == null ? null : inches(tall))
                .stream()
                .filter(f -> f.sum() == sum)
                .findFirst()
                .orElseThrow()
                .figure();
    }

    private static double value(Map<Reading, Length> read, Sum sum, @Nullable Double deep, @Nullable Double tall) {
        return figure(read, sum, deep, tall).value();
    }

    private static Map<Reading, Length> of(Object... pairs) {
        Map<Reading, Length> readings = new EnumMap<>(Reading.class);
        for (int n = 0; n < pairs.length; n += 2) {
            readings.put((Reading) pairs[n], inches((Double) pairs[n + 1]));
        }
        return readings;
    }

    private static Length inches(double inches) {
        return new Length(Math.round(inches * Length.INCH));
    }
}
