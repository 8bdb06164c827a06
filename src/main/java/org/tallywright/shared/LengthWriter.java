package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Lengths as a carpenter writes them. */
final class LengthWriter {
    private static final String ABOUT = "\u2248 ";

    private LengthWriter() {}

    static String feetAndInches(Length length) {
        long all = Math.abs(length.units());
        if (all < Length.FOOT || all % Length.SIXTY_FOURTH != 0) {
            return inches(length);
        }
        String feet = sign(length) + all / Length.FOOT + "'";
        long rest = all % Length.FOOT;
        return rest == 0 ? feet : feet + " " + mixed(rest) + "\"";
    }

    static String inches(Length length) {
        long all = Math.abs(length.units());
        if (all % Length.SIXTY_FOURTH != 0) {
            return ABOUT + number(length.inches(), 4) + "\"";
        }
        return sign(length) + mixed(all) + "\"";
    }

    static String millimetres(Length length) {
        String number = number(length.millimetres(), length.units() % 32 == 0 ? 1 : 3) + " mm";
        return length.units() % 32 == 0 ? number : ABOUT + number;
    }

    private static String sign(Length length) {
        return length.isNegative() ? "-" : "";
    }

    private static String number(BigDecimal value, int places) {
        return Decimals.plain(value.setScale(places, RoundingMode.HALF_UP)).toPlainString();
    }

    /** Whole inches and the fraction in lowest terms. */
    private static String mixed(long units) {
        long whole = units / Length.INCH;
        long numerator = units % Length.INCH / Length.SIXTY_FOURTH;
        if (numerator == 0) {
            return Long.toString(whole);
        }
        long even = Long.lowestOneBit(numerator);
        String fraction = numerator / even + "/" + 64 / even;
        return whole == 0 ? fraction : whole + " " + fraction;
    }
}
