package org.tallywright.past;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.tallywright.catalog.Measure;
import org.tallywright.catalog.PieceGeometry;
import org.tallywright.catalog.PieceKindCard;
import org.tallywright.catalog.PieceKindLine;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;

/**
 * How quantities of a past piece become those of a new one of other sizes: a task grows with what the catalogue says it grows
 * with in this kind of piece, material with what its unit measures. Where the catalogue does not know, or a size is missing, a
 * quantity follows the number alike and nothing else, and that is said.
 */
final class Scaling {
    private final @Nullable PieceKindCard kind;
    private final PieceGeometry then;
    private final PieceGeometry now;
    private final UnaryOperator<UUID> countedAs;

    /** @param countedAs the task kind that a kind counts as today */
    Scaling(@Nullable PieceKindCard kind, PieceGeometry then, PieceGeometry now, UnaryOperator<UUID> countedAs) {
        this.kind = kind;
        this.then = then;
        this.now = now;
        this.countedAs = countedAs;
    }

    /** @param how in words, empty where nothing changes */
    record Factor(BigDecimal times, boolean roundUp, String how) {
        static final Factor SAME = new Factor(BigDecimal.ONE, false, "");

        /** As fine as the unit is counted; things that are counted whole go up. A quantity that does not change stays exact. */
        Quantity of(Quantity there, Unit unit) {
            return of(there, unit.places());
        }

        /** Of material. */
        Quantity of(Quantity there, String unit) {
            return of(there, PastMaterial.places(unit));
        }

        private Quantity of(Quantity there, int places) {
            return roundUp ? of(there, 0, RoundingMode.CEILING) : of(there, places, RoundingMode.HALF_UP);
        }

        private Quantity of(Quantity there, int places, RoundingMode rounding) {
            if (times.compareTo(BigDecimal.ONE) == 0 || there.isZero()) {
                return there;
            }
            BigDecimal exact = there.amount().multiply(times).setScale(6, RoundingMode.HALF_UP);
            return Quantity.of(exact.setScale(places, rounding).max(BigDecimal.ONE.movePointLeft(places)));
        }
    }

    /** By the measures of the kind's lines for that task; several lines each with its own weight. */
    Factor task(UUID taskKind) {
        if (then.equals(now)) {
            return Factor.SAME;
        }
        UUID wanted = countedAs.apply(taskKind);
        List<PieceKindLine> lines = kind == null
                ? List.of()
                : kind.lines().stream()
                        .filter(line -> countedAs.apply(line.taskKindId()).equals(wanted))
                        .toList();
        if (lines.isEmpty()) {
            return byNumber(false, ": the kind of piece does not say what it grows with");
        }
        Optional<BigDecimal> before = quantity(lines, then);
        Optional<BigDecimal> after = quantity(lines, now);
        String by =
                lines.stream().map(line -> line.measure().label()).distinct().collect(Collectors.joining(" and "));
        return factor(before, after, lines.stream().allMatch(PieceKindLine::roundUp), by);
    }

    private static Optional<BigDecimal> quantity(List<PieceKindLine> lines, PieceGeometry piece) {
        BigDecimal sum = BigDecimal.ZERO;
        for (PieceKindLine line : lines) {
            Optional<BigDecimal> measure = piece.measure(line.measure());
            if (measure.isEmpty()) {
                return Optional.empty();
            }
            sum = sum.add(measure.get().multiply(line.factor()));
        }
        return Optional.of(sum);
    }

    /**
     * Runs grow with the edge of a kind that is made by its face; what covers or fills with the face; all with the width where
     * the kind is made by that. What is counted, or bought by a word of the shop's own, goes with the number alike.
     */
    Factor material(String unit) {
        if (then.equals(now)) {
            return Factor.SAME;
        }
        Unit known = Unit.known(unit).orElse(null);
        boolean whole = known != null && known != Unit.SHEET && !known.isMeasured();
        if (known == null || whole) {
            return byNumber(whole, "");
        }
        if (kind == null) {
            return byNumber(false, ": the piece has no kind that says what it grows with");
        }
        boolean run = known == Unit.LF || known == Unit.LM;
        Measure natural = natural(kind);
        Measure by = run && natural == Measure.FACE ? Measure.PERIMETER : natural;
        return factor(then.measure(by), now.measure(by), false, by.label());
    }

    private Factor factor(Optional<BigDecimal> before, Optional<BigDecimal> after, boolean roundUp, String by) {
        if (before.isEmpty() || after.isEmpty()) {
            return byNumber(roundUp, ": a size is missing");
        }
        BigDecimal times = after.get().divide(before.get(), MathContext.DECIMAL64);
        return times.compareTo(BigDecimal.ONE) == 0
                ? Factor.SAME
                : new Factor(times, roundUp, shown(times) + " by " + by);
    }

    /** @param why it goes with nothing else, after a colon; empty where nothing is missing */
    private Factor byNumber(boolean roundUp, String why) {
        BigDecimal times =
                BigDecimal.valueOf(now.count()).divide(BigDecimal.valueOf(then.count()), MathContext.DECIMAL64);
        if (times.compareTo(BigDecimal.ONE) == 0) {
            return new Factor(
                    times, false, "quantity as it was" + (why.isEmpty() ? ", by " + Measure.EACH.label() : why));
        }
        return new Factor(times, roundUp, shown(times) + " by " + Measure.EACH.label() + why);
    }

    private static String shown(BigDecimal times) {
        return "quantity x "
                + times.round(new MathContext(3)).stripTrailingZeros().toPlainString();
    }

    /** Face or width, whichever more of the kind's tasks grow with; the number of pieces where none grows with either. */
    static Measure natural(@Nullable PieceKindCard kind) {
        long face = lines(kind, Measure.FACE);
        long width = lines(kind, Measure.WIDTH);
        return face + width == 0 ? Measure.EACH : face >= width ? Measure.FACE : Measure.WIDTH;
    }

    private static long lines(@Nullable PieceKindCard kind, Measure measure) {
        return kind == null
                ? 0
                : kind.lines().stream()
                        .filter(line -> line.measure() == measure)
                        .count();
    }
}
