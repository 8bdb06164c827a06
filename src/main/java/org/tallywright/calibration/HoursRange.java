package org.tallywright.calibration;

import org.tallywright.calibration.engine.Distribution;

/**
 * What hours may come to, in person-hours. Two things that are never mixed: {@code low} to {@code high} is the central
 * range that holds four times in five; {@code p80} is stayed under four times in five.
 */
public record HoursRange(double low, double median, double high, double p80, double p90, double mean) {
    static HoursRange of(Distribution hours) {
        return new HoursRange(hours.low80(), hours.median(), hours.high80(), hours.p80(), hours.p90(), hours.mean());
    }

    /** Without hours that are logged already. */
    HoursRange less(double logged) {
        return new HoursRange(low - logged, median - logged, high - logged, p80 - logged, p90 - logged, mean - logged);
    }

    boolean holds(double hours) {
        return hours >= low && hours <= high;
    }

    /** The hours that are stayed under so many times in a hundred: 50, 80 or 90. */
    public double under(int percent) {
        return switch (percent) {
            case 50 -> median;
            case 80 -> p80;
            case 90 -> p90;
            default -> throw new IllegalArgumentException("50, 80 or 90, not " + percent);
        };
    }
}
