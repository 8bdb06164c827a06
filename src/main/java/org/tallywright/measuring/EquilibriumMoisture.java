package org.tallywright.measuring;

/**
 * The moisture that wood takes on in air of one temperature and humidity, in percent of its dry weight.
 *
 * <p>Source: Wood Handbook, FPL-GTR-282 equation 4-5 (two-hydrate sorption) with the Fahrenheit coefficients, as read in
 * works that restate it. Shown for {@value #COLDEST} to {@value #WARMEST} F and {@value #DRIEST} to {@value #DAMPEST} percent:
 * held up to 100 F against table 4-2 of the same book from memory, not as read, and beyond at one point restated elsewhere.
 */
public final class EquilibriumMoisture {
    public static final int COLDEST = 30;
    public static final int WARMEST = 140;
    public static final int DRIEST = 5;
    public static final int DAMPEST = 95;

    private EquilibriumMoisture() {}

    public static boolean isKnown(double fahrenheit, double humidityPercent) {
        return fahrenheit >= COLDEST
                && fahrenheit <= WARMEST
                && humidityPercent >= DRIEST
                && humidityPercent <= DAMPEST;
    }

    /** @param humidityPercent relative humidity, 0 to 100 */
    public static double percent(double fahrenheit, double humidityPercent) {
        double t = fahrenheit;
        double w = 330 + 0.452 * t + 0.00415 * t * t;
        double k = 0.791 + 0.000463 * t - 0.000000844 * t * t;
        double k1 = 6.34 + 0.000775 * t - 0.0000935 * t * t;
        double k2 = 1.09 + 0.0284 * t - 0.0000904 * t * t;
        double kh = k * humidityPercent / 100;
        double one = k1 * kh;
        double two = k1 * k2 * kh * kh;
        return 1800 / w * (kh / (1 - kh) + (one + 2 * two) / (1 + one + two));
    }
}
