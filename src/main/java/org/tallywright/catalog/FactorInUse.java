package org.tallywright.catalog;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.tallywright.shared.Unit;
import org.tallywright.shared.Units;

/**
 * A factor as the shop reads it: the task kind's own unit for each ft, sf or cubic ft of the piece, or for each m, m2
 * or m3 in a metric shop. It is kept for feet and imperial units, so that it stays true when either changes.
 */
public record FactorInUse(Measure measure, Unit unit, Units units) {
    private static final int PLACES = 5;

    /** To five places. */
    public BigDecimal shown(BigDecimal kept) {
        return rounded(kept.multiply(unitSize()).divide(measureSize(), MathContext.DECIMAL128));
    }

    /** To five places. */
    public BigDecimal kept(BigDecimal shown) {
        return rounded(shown.multiply(measureSize()).divide(unitSize(), MathContext.DECIMAL128));
    }

    /** {@code 2.25 lf for each sf of face}, {@code 6 trip for the whole job}. */
    public String words(PieceKindLine line) {
        String amount = shown(line.factor()).toPlainString() + " " + unit.code();
        String rule = switch (measure) {
            case JOB -> amount + " for the whole job";
            case EACH -> amount + " for each piece";
            default -> amount + " for each " + per();
        };
        return line.roundUp() && measure != Measure.JOB ? rule + ", rounded up" : rule;
    }

    /** What the measure is counted in and called: {@code ft of width}, {@code m2 of face}. */
    public String per() {
        boolean metric = units == Units.METRIC;
        return switch (measure) {
            case EACH -> "piece";
            case JOB -> "job";
            case WIDTH, HEIGHT, DEPTH -> (metric ? "m" : "ft") + " of " + measure.code();
            case PERIMETER -> (metric ? "m" : "ft") + " of edge all round";
            case FACE -> (metric ? "m2" : "sf") + " of face";
            case FLOOR -> (metric ? "m2" : "sf") + " of plan";
            case VOLUME -> (metric ? "m3" : "cubic ft") + " of volume";
        };
    }

    private BigDecimal unitSize() {
        return unit.isMetric() ? unit.metricFactor() : BigDecimal.ONE;
    }

    private BigDecimal measureSize() {
        if (units == Units.IMPERIAL) {
            return BigDecimal.ONE;
        }
        BigDecimal foot = Unit.LF.metricFactor();
        return switch (measure) {
            case EACH, JOB -> BigDecimal.ONE;
            case WIDTH, HEIGHT, DEPTH, PERIMETER -> foot;
            case FACE, FLOOR -> Unit.SF.metricFactor();
            case VOLUME -> foot.multiply(foot).multiply(foot);
        };
    }

    private static BigDecimal rounded(BigDecimal exact) {
        BigDecimal five = exact.setScale(PLACES, RoundingMode.HALF_UP).stripTrailingZeros();
        return five.scale() < 0 ? five.setScale(0) : five;
    }
}
