package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Lengths as people write them; see {@link Length#parse}. */
final class LengthReader {
    private static final String NUMBER = "\\d{1,9}(?:[.,]\\d{0,9})?|[.,]\\d{1,9}";
    private static final String INCHES =
            "(?:(\\d{1,7})(?: |-| - )(\\d{1,2})/(\\d{1,2})|(\\d{1,2})/(\\d{1,2})|(" + NUMBER + "))";
    private static final String INCH_MARK = "(?:\"|''|in\\.?|ins|inch|inches)";
    private static final Pattern IMPERIAL = Pattern.compile(
            "(?:(" + NUMBER + ") ?(?:'(?!')|ft\\.?|foot|feet)(?: |-| - )?)?(?:" + INCHES + " ?(" + INCH_MARK + ")?)?");
    private static final Pattern METRIC =
            Pattern.compile("(" + NUMBER + ") ?(mm|cm|m|millimet(?:re|er)s?|centimet(?:re|er)s?|met(?:re|er)s?)");
    private static final Pattern TWO_WAYS = Pattern.compile("[1-9]\\d{0,2},\\d{3}");
    private static final BigDecimal LONGEST = BigDecimal.valueOf(100 * Length.METRE);
    private static final BigDecimal TWELVE = BigDecimal.valueOf(12);

    private LengthReader() {}

    static Length read(String typed, Units bare, boolean signed) {
        // The sign that LengthWriter puts before a length between two marks comes back when a form is sent again.
        String tidy = Decimals.tidy(typed).replaceFirst("^[\u2248~] ?", "");
        if (tidy.isEmpty()) {
            throw new NotUnderstood("Write a length, such as " + example(bare) + ".");
        }
        boolean negative = tidy.startsWith("-");
        if (negative && !signed) {
            throw new NotUnderstood("A length cannot be negative here.");
        }
        String size = negative ? tidy.substring(1).strip() : tidy;
        BigDecimal units = size.length() > Decimals.LONGEST ? null : units(size, bare, typed);
        if (units == null) {
            throw new NotUnderstood(
                    "\"" + Decimals.shown(typed) + "\" is not a length; write it like " + example(bare) + ".");
        }
        // The nearest unit first: 100 m written in inches to four places reads a hair longer.
        if (units.setScale(0, RoundingMode.HALF_UP).compareTo(LONGEST) > 0) {
            throw new NotUnderstood("\"" + Decimals.shown(typed) + "\" is longer than 100 m; check the unit.");
        }
        return Length.of(negative ? units.negate() : units, 1);
    }

    private static String example(Units bare) {
        return bare == Units.METRIC ? "803, 80.3 cm or 31 5/8\"" : "31 5/8, 4' 3-7/8\" or 803 mm";
    }

    private static @Nullable BigDecimal units(String size, Units bare, String typed) {
        Matcher metric = METRIC.matcher(size);
        if (metric.matches()) {
            long unit = metric.group(2).startsWith("mm") || metric.group(2).startsWith("milli")
                    ? Length.MILLIMETRE
                    : metric.group(2).startsWith("c") ? 10 * Length.MILLIMETRE : Length.METRE;
            return number(metric.group(1), typed).multiply(BigDecimal.valueOf(unit));
        }
        Matcher imperial = IMPERIAL.matcher(size);
        if (!imperial.matches()) {
            return null;
        }
        boolean onlyNumber = imperial.group(1) == null && imperial.group(7) != null && imperial.group(8) == null;
        if (onlyNumber && bare == Units.METRIC) {
            return number(imperial.group(7), typed).multiply(BigDecimal.valueOf(Length.MILLIMETRE));
        }
        return imperial(imperial, typed);
    }

    private static BigDecimal imperial(Matcher m, String typed) {
        BigDecimal feet = m.group(1) == null ? BigDecimal.ZERO : number(m.group(1), typed);
        BigDecimal inches = inches(m, typed);
        boolean both = m.group(1) != null && inches != null;
        if (both && Decimals.plain(feet).scale() > 0) {
            throw new NotUnderstood("In \"" + Decimals.shown(typed) + "\" the feet before inches must be whole.");
        }
        if (both && inches != null && inches.compareTo(TWELVE) >= 0) {
            throw new NotUnderstood("In \"" + Decimals.shown(typed) + "\" the inches after feet stay under 12.");
        }
        BigDecimal exact = feet.multiply(TWELVE).add(inches == null ? BigDecimal.ZERO : inches);
        return exact.multiply(BigDecimal.valueOf(Length.INCH));
    }

    private static @Nullable BigDecimal inches(Matcher m, String typed) {
        if (m.group(7) != null) {
            return number(m.group(7), typed);
        }
        if (m.group(3) != null) {
            return new BigDecimal(m.group(2)).add(fraction(m.group(3), m.group(4), typed));
        }
        return m.group(5) == null ? null : fraction(m.group(5), m.group(6), typed);
    }

    private static BigDecimal fraction(String top, String bottom, String typed) {
        int numerator = Integer.parseInt(top);
        int denominator = Integer.parseInt(bottom);
        if (denominator < 2 || denominator > 64 || Integer.bitCount(denominator) != 1 || numerator >= denominator) {
            throw new NotUnderstood("In \"" + Decimals.shown(typed)
                    + "\" the fraction is not one of a tape; use halves, quarters and so on to 64ths.");
        }
        return new BigDecimal(numerator).divide(new BigDecimal(denominator));
    }

    private static BigDecimal number(String digits, String typed) {
        if (TWO_WAYS.matcher(digits).matches()) {
            throw new NotUnderstood("\"" + Decimals.shown(typed) + "\" can be read in two ways; write "
                    + digits.replace(",", "") + " or " + digits.replace(',', '.') + ".");
        }
        String plain = digits.replace(',', '.');
        return new BigDecimal(plain.endsWith(".") ? plain.substring(0, plain.length() - 1) : plain);
    }
}
