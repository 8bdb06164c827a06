package org.tallywright.calibration.web;

import java.math.BigDecimal;
import java.math.MathContext;
import org.tallywright.calibration.RoundHours;
import org.tallywright.calibration.Trend;

/** Figures of the calibration in words. */
final class RateWords {
    private RateWords() {}

    /** Two figures that count. */
    static String figure(double value) {
        return figure(value, 2);
    }

    static String figure3(double value) {
        return figure(value, 3);
    }

    private static String figure(double value, int count) {
        BigDecimal rounded =
                BigDecimal.valueOf(value).round(new MathContext(count)).stripTrailingZeros();
        return rounded.scale() < 0 ? rounded.setScale(0).toPlainString() : rounded.toPlainString();
    }

    static String hours(double hours) {
        return RoundHours.of(hours).toString();
    }

    /** {@code 12 % more}, {@code 4 % less}, {@code no difference}. */
    static String percent(double ratio) {
        long percent = Math.round(100 * (ratio - 1));
        return percent == 0 ? "no difference" : percent > 0 ? percent + " % more" : -percent + " % less";
    }

    /** {@code 12 % longer}, {@code 4 % shorter}, {@code as long}. */
    static String longer(double ratio) {
        long percent = Math.round(100 * (ratio - 1));
        return percent == 0 ? "as long" : percent > 0 ? percent + " % longer" : -percent + " % shorter";
    }

    /** {@code 12 % more than the older half}, {@code as much as the older half}. */
    static String than(double ratio, String other) {
        return Math.round(100 * (ratio - 1)) == 0 ? "as much as " + other : percent(ratio) + " than " + other;
    }

    static String trend(Trend trend) {
        return "A unit in the newer half of " + trend.tasks() + " tasks took "
                + than(trend.ratio(), "in the older half") + "; four times in five between " + percent(trend.low())
                + " and " + percent(trend.high()) + ": " + trend.word() + ".";
    }
}
