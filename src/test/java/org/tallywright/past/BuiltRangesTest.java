package org.tallywright.past;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.tallywright.calibration.SeenRange;
import org.tallywright.catalog.Measure;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.Money;
import org.tallywright.shared.Units;

class BuiltRangesTest {
    private final Map<UUID, BuiltPiece.Took> took = new HashMap<>();
    private final Map<UUID, Money> costs = new HashMap<>();
    private final List<BuiltPiece> pieces = new ArrayList<>();

    /** Three feet high. */
    private BuiltPiece piece(String width, int count, int minutes, boolean built) {
        PieceDetails details = new PieceDetails(null, "Case", inches(width), inches("36"), null, count, "");
        BuiltPiece piece =
                new BuiltPiece(Ids.next(), Ids.next(), "25-001", "Cases", "Orrin", "Case", details, null, built, false);
        took.put(piece.id(), new BuiltPiece.Took(0, minutes, 0, 0, 0));
        pieces.add(piece);
        return piece;
    }

    private static Length inches(String typed) {
        return Length.parse(typed, Units.IMPERIAL);
    }

    private BuiltRanges ranges(Measure natural) {
        return BuiltRanges.of(natural, pieces, took, costs, Map.of());
    }

    /** Four alike, 24 in x 36 in or 6 sf each, in 20 h for 800.00: 5 h and 200.00 for one, 0.833 h and 33.33 for a square foot. */
    @Test
    void dividesByTheNumberAlike() {
        costs.put(piece("24", 4, 1200, true).id(), Money.of("800.00"));

        BuiltRanges ranges = ranges(Measure.FACE);

        assertThat(ranges.hours().orElseThrow().median()).isEqualTo(5.0);
        assertThat(ranges.perMeasure().orElseThrow().median()).isBetween(0.8333, 0.8334);
        assertThat(ranges.material().orElseThrow().median()).isEqualTo(200.0);
        assertThat(ranges.materialPerMeasure().orElseThrow().median()).isBetween(33.333, 33.334);
        assertThat(ranges(Measure.EACH).perMeasure()).isEmpty();
    }

    /** A lot of four alike is one piece of experience, not four. */
    @Test
    void weighsALotAsOne() {
        piece("24", 4, 1200, true);
        piece("24", 1, 600, true);
        assertThat(ranges(Measure.FACE).hours().orElseThrow())
                .extracting(SeenRange::n, SeenRange::lowest, SeenRange::highest)
                .containsExactly(2, 5.0, 10.0);
    }

    @Test
    void givesARangeFromTenOnThatLeavesTheEndsOut() {
        for (int hours = 1; hours <= 9; hours++) {
            piece("24", 1, hours * 60, true);
        }
        assertThat(ranges(Measure.FACE).hours().orElseThrow().enough()).isFalse();

        piece("24", 1, 600, true);
        piece("24", 1, 60_000, false);

        SeenRange ten = ranges(Measure.FACE).hours().orElseThrow();
        assertThat(ten.enough()).isTrue();
        assertThat(ten.n()).isEqualTo(10);
        assertThat(ten.median()).isBetween(5.0, 6.0);
        assertThat(ten.low()).isBetween(1.0, 2.0);
        assertThat(ten.high()).isBetween(9.0, 10.0);
        assertThat(ten.highest()).as("what is not built counts nowhere").isEqualTo(10.0);
    }

    @Test
    void countsThoseOfWhoseMaterialNothingIsKnown() {
        costs.put(piece("24", 1, 60, true).id(), Money.of("90.00"));
        piece("24", 1, 60, true);
        piece("24", 1, 60, true);
        piece("24", 1, 60, false);

        BuiltRanges ranges = ranges(Measure.FACE);

        assertThat(ranges.material().orElseThrow().n()).isEqualTo(1);
        assertThat(ranges.unpaid()).isEqualTo(2);
    }
}
