package org.tallywright.measuring.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.tallywright.measuring.Reckoned;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;

/**
 * Computed figures in the shop's way of measuring, no finer than a tape: lengths to the nearest 1/32 inch or half
 * millimetre, their plus or minus up to the next 1/64 inch or tenth of a millimetre.
 */
record Figures(Units units) {
    /** Two 64ths. */
    private static final long FINE_INCH = 254;

    private static final long HALF_MILLIMETRE = 160;

    private boolean metric() {
        return units == Units.METRIC;
    }

    /** To the nearest mark; the sign is left to the words around it. */
    String size(double inches) {
        long mark = metric() ? HALF_MILLIMETRE : FINE_INCH;
        long marks = Math.round(Math.abs(units(inches)) / mark);
        return new Length(marks * mark).format(units);
    }

    String signed(double inches) {
        String size = size(inches);
        return inches < 0 && !size.startsWith("0") ? "-" + size : size;
    }

    /** Up to the next mark, so that no doubt is rounded away. */
    String sizeUp(double inches) {
        double mark = metric() ? 32 : 127;
        return new Length((long) (Math.ceil(Math.abs(units(inches)) / mark - 1e-6) * mark)).format(units);
    }

    /** Up to the next mark a tape has: what is cut to it is wide enough. */
    String cut(double inches) {
        long mark = metric() ? HALF_MILLIMETRE : FINE_INCH;
        return new Length((long) Math.ceil(Math.abs(units(inches)) / mark - 1e-6) * mark).format(units);
    }

    /** What a reading is good to, up to the next tenth of a millimetre or 1/64 inch. */
    String goodTo(Length doubt) {
        return sizeUp((double) doubt.units() / Length.INCH);
    }

    /** A length that was read, said in a sentence. */
    String read(Length length) {
        return size((double) length.units() / Length.INCH);
    }

    String length(Reckoned figure) {
        return signed(figure.value()) + " \u00b1 " + sizeUp(figure.plusMinus());
    }

    String degrees(Reckoned figure) {
        return decimals(figure.value(), 2) + "\u00b0 \u00b1 " + up(figure.plusMinus()) + "\u00b0";
    }

    String percent(Reckoned figure) {
        return decimals(figure.value(), 1) + " % \u00b1 " + decimals(Math.ceil(figure.plusMinus() * 10 - 1e-6) / 10, 1)
                + " %";
    }

    String temperature(BigDecimal celsius, BigDecimal fahrenheit) {
        return metric()
                ? decimals(celsius.doubleValue(), 1) + " \u00b0C"
                : decimals(fahrenheit.doubleValue(), 1) + " \u00b0F";
    }

    static String decimals(double value, int places) {
        return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP).toPlainString();
    }

    private static String up(double degrees) {
        return decimals(Math.ceil(degrees * 100 - 1e-6) / 100, 2);
    }

    private static double units(double inches) {
        return inches * Length.INCH;
    }
}
