package org.tallywright.past;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.tallywright.catalog.Measure;
import org.tallywright.catalog.PieceGeometry;
import org.tallywright.catalog.PieceKindCard;
import org.tallywright.catalog.PieceKindLine;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;
import org.tallywright.shared.Units;

/**
 * Worked by hand: a bookcase of 3 ft x 7 ft, face 21 sf, edge all round 20 ft; the new one is 4 ft x 8 ft, face 32 sf, edge 24 ft.
 * By face everything grows 32/21 = 1.52 times, by the edge 24/20 = 1.2 times, by width 4/3 = 1.33 times.
 */
class ScalingTest {
    private final UUID dado = Ids.next();
    private final UUID scribe = Ids.next();
    private final UUID cases = Ids.next();
    private final UUID both = Ids.next();
    private final UUID stranger = Ids.next();

    private final PieceKindCard bookcase = new PieceKindCard(
            Ids.next(),
            "Bookcase",
            true,
            0,
            List.of(
                    line(dado, Measure.FACE, "2.25", false),
                    line(scribe, Measure.PERIMETER, "1", false),
                    line(cases, Measure.FACE, "0.065", true),
                    line(both, Measure.FACE, "1", false),
                    line(both, Measure.EACH, "10", false)));

    private static PieceKindLine line(UUID kind, Measure measure, String factor, boolean roundUp) {
        return new PieceKindLine(kind, measure, new BigDecimal(factor), roundUp);
    }

    private static PieceGeometry piece(String width, String height, int count) {
        return new PieceGeometry(units(width), units(height), units("12"), count);
    }

    private static long units(String inches) {
        return Length.parse(inches, Units.IMPERIAL).units();
    }

    private Scaling scaling(@Nullable PieceKindCard kind, PieceGeometry now) {
        return new Scaling(kind, piece("36", "84", 1), now, UnaryOperator.identity());
    }

    private final PieceGeometry larger = piece("48", "96", 1);

    @Test
    void growsATaskWithWhatItsKindOfPieceSays() {
        // 47 lf really done x 32/21 = 71.619 lf, to a tenth; 20 lf x 1.2 = 24 lf.
        Scaling.Factor byFace = scaling(bookcase, larger).task(dado);
        assertThat(byFace.of(Quantity.of(47), Unit.LF)).isEqualTo(Quantity.of("71.6"));
        assertThat(byFace.how()).isEqualTo("quantity x 1.52 by face, width x height");
        assertThat(scaling(bookcase, larger).task(scribe).of(Quantity.of(20), Unit.LF))
                .isEqualTo(Quantity.of(24));
    }

    @Test
    void roundsUpWhatIsCountedWhole() {
        // 2 cases x 1.52 = 3.05.
        assertThat(scaling(bookcase, larger).task(cases).of(Quantity.of(2), Unit.EACH))
                .isEqualTo(Quantity.of(4));
    }

    @Test
    void weighsSeveralLinesOfOneKind() {
        // Then 21 + 10 = 31, now 32 + 10 = 42: 62 x 42/31 = 84.
        assertThat(scaling(bookcase, larger).task(both).of(Quantity.of(62), Unit.EACH))
                .isEqualTo(Quantity.of(84));
    }

    @Test
    void doublesWithTheNumberAlike() {
        assertThat(scaling(bookcase, piece("36", "84", 2)).task(dado).of(Quantity.of("47.25"), Unit.LF))
                .isEqualTo(Quantity.of("94.5"));
    }

    @Test
    void keepsAQuantityExactWhereNothingChanges() {
        Scaling.Factor same = scaling(bookcase, piece("36", "84", 1)).task(cases);
        assertThat(same.of(Quantity.of("2.1234"), Unit.EACH)).isEqualTo(Quantity.of("2.1234"));
        assertThat(same.how()).isEmpty();
    }

    @Test
    void keepsWhatItCannotScaleAndSaysSo() {
        Scaling.Factor unknown = scaling(bookcase, larger).task(stranger);
        assertThat(unknown.of(Quantity.of(7), Unit.LF)).isEqualTo(Quantity.of(7));
        assertThat(unknown.how()).contains("as it was").contains("does not say");
        assertThat(scaling(null, larger).task(dado).how()).contains("as it was");
        assertThat(scaling(null, larger).material("bf").how())
                .contains("as it was")
                .contains("no kind");
        assertThat(scaling(bookcase, new PieceGeometry(units("48"), null, null, 1))
                        .task(dado)
                        .how())
                .contains("a size is missing");
    }

    /** Where nobody knows better, three alike take three times as much. */
    @Test
    void goesWithTheNumberAlikeWhereItKnowsNothingElse() {
        PieceGeometry three = piece("48", "96", 3);
        assertThat(scaling(bookcase, three).task(stranger).of(Quantity.of(7), Unit.LF))
                .isEqualTo(Quantity.of(21));
        assertThat(scaling(null, three).material("bf").of(Quantity.of(7), "bf")).isEqualTo(Quantity.of(21));
        Scaling.Factor sizeless =
                scaling(bookcase, new PieceGeometry(units("48"), null, null, 3)).task(dado);
        assertThat(sizeless.of(Quantity.of(7), Unit.LF)).isEqualTo(Quantity.of(21));
        assertThat(sizeless.how()).isEqualTo("quantity x 3 by number of pieces: a size is missing");
    }

    @Test
    void isMeasuredByFaceWhereMostTasksAre() {
        assertThat(Scaling.natural(bookcase)).isEqualTo(Measure.FACE);
        assertThat(Scaling.natural(null)).isEqualTo(Measure.EACH);
    }

    /** Twice as wide and as high: four times the face, twice the edge, and as many pieces. */
    @Test
    void growsMaterialWithWhatItsUnitMeasures() {
        Scaling twice = scaling(bookcase, piece("72", "168", 1));
        for (String covers : List.of("sf", "sheet", "bf", "m2", "m3")) {
            assertThat(twice.material(covers).of(Quantity.of("5.5"), covers))
                    .as(covers)
                    .isEqualTo(Quantity.of(22));
        }
        for (String runs : List.of("lf", "lm")) {
            assertThat(twice.material(runs).of(Quantity.of("5.5"), runs))
                    .as(runs)
                    .isEqualTo(Quantity.of(11));
        }
        for (String counted : List.of("each", "panel", "box of 50")) {
            assertThat(twice.material(counted).of(Quantity.of(6), counted))
                    .as(counted)
                    .isEqualTo(Quantity.of(6));
        }
        assertThat(twice.material("lf").how()).isEqualTo("quantity x 2 by edge of the face, all round");
        assertThat(twice.material("each").how()).isEqualTo("quantity as it was, by number of pieces");
    }

    /** 0.0236 m3 x 32/21 = 0.03596 m3; a hundredth would make it 0.04, 17 bf for 15. */
    @Test
    void isAsFineAsAMetricUnitIsCounted() {
        Scaling scaling = scaling(bookcase, larger);
        assertThat(scaling.material("m3").of(Quantity.of("0.0236"), "m3")).isEqualTo(Quantity.of("0.036"));
        assertThat(scaling.material("m2").of(Quantity.of("1.951"), "m2")).isEqualTo(Quantity.of("2.97"));
        assertThat(scaling.task(dado).of(Quantity.of("0.0236"), Unit.M3)).isEqualTo(Quantity.of("0.036"));
        assertThat(scaling.task(dado).of(Quantity.of("14.33"), Unit.LM)).isEqualTo(Quantity.of("21.84"));
        assertThat(scaling.material("m3").of(Quantity.of("0.0001"), "m3")).isEqualTo(Quantity.of("0.0002"));
    }

    @Test
    void countsMaterialWhole() {
        // 1.33 x 3 = 3.99.
        Scaling three = scaling(bookcase, piece("36", "84", 3));
        assertThat(three.material("each").of(Quantity.of("1.33"), "each")).isEqualTo(Quantity.of(4));
        assertThat(three.material("box of 50").of(Quantity.of("1.33"), "box of 50"))
                .isEqualTo(Quantity.of("3.99"));
        assertThat(three.material("lf").of(Quantity.of("20"), "lf")).isEqualTo(Quantity.of(60));
        assertThat(three.material("each").how()).isEqualTo("quantity x 3 by number of pieces");
    }

    @Test
    void growsAllMaterialWithTheWidthOfAKindThatIsMadeByWidth() {
        PieceKindCard shelf =
                new PieceKindCard(Ids.next(), "Shelf", true, 0, List.of(line(dado, Measure.WIDTH, "1", false)));
        PieceGeometry twiceAsWide = new PieceGeometry(units("72"), null, null, 1);
        assertThat(scaling(shelf, twiceAsWide).material("lf").of(Quantity.of(3), "lf"))
                .isEqualTo(Quantity.of(6));
        assertThat(scaling(shelf, twiceAsWide).material("bf").of(Quantity.of(3), "bf"))
                .isEqualTo(Quantity.of(6));
    }

    @Test
    void countsAMergedKindAsTheOneItWentInto() {
        UUID merged = Ids.next();
        Scaling scaling =
                new Scaling(bookcase, piece("36", "84", 1), larger, kind -> kind.equals(merged) ? dado : kind);
        assertThat(scaling.task(merged).of(Quantity.of(21), Unit.SF)).isEqualTo(Quantity.of(32));
    }
}
