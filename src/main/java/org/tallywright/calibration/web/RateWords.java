package org.tallywright.calibration.web;

import java.math.BigDecimal;
import java.math.MathContext;
import org.tallywright.calibration.Trend;
import org.tallywright.shared.Hours;

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

    /** To the quarter hour below ten hours, to the hour above: a forecast is no stopwatch. */
    static String hours(double hours) {
        double step = hours < 1 ? 60.0 / 5 : hours < 10 ? 4 : 1;
        long minutes = Math.round(Math.round(hours * step) * 60 / step);
        return Hours.ofMinutes(Math.toIntExact(minutes)).toString();
    }

    /** {@code 12 % longer}, {@code 4 % less}. */
    static String percent(double ratio) {
        long percent = Math.round(100 * (ratio - 1));
        return percent == 0 ? "the same" : percent > 0 ? percent + " % longer" : -percent + " % less";
    }

    static String trend(Trend trend) {
        return "The newer half of " + trend.tasks() + " tasks took " + percent(trend.ratio())
                + " for a unit than the older half; four times in five between " + percent(trend.low()) + " and "
                + percent(trend.high()) + ": " + trend.word() + ".";
    }
}
