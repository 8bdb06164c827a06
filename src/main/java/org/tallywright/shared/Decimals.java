package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Numbers as people type them. Package-private: the values say what a number is a number of. */
final class Decimals {
    static final int LONGEST = 60;
    private static final int MOST_TYPED = 400;

    private static final Pattern PLAIN = Pattern.compile("(\\d{1,15})(?:\\.(\\d{0,15}))?|\\.(\\d{1,15})");
    private static final Pattern GROUPED = Pattern.compile("[1-9]\\d{0,2}(?:[, ']\\d{3})+(?:\\.\\d{0,15})?");
    private static final Pattern GROUPED_BY_POINTS =
            Pattern.compile("[1-9]\\d{0,2}(?:[. ]\\d{3})+,\\d{1,15}|" + "[1-9]\\d{0,2}(?:\\.\\d{3}){2,}");
    private static final Pattern COMMA = Pattern.compile("(\\d{1,15})?,\\d{1,15}");
    private static final Pattern MIXED = Pattern.compile("(?:(\\d{1,9})(?: |-| - ))?(\\d{1,4})/(\\d{1,4})");

    private Decimals() {}

    /**
     * One kind of space, dash and quote, fractions spelt out, lower case, no space at the ends.
     *
     * @throws NotUnderstood for more text than any box of a value holds; cutting it short could change what it says
     */
    static String tidy(String typed) {
        if (typed.length() > MOST_TYPED) {
            throw new NotUnderstood("That is too long for this box.");
        }
        StringBuilder out = new StringBuilder(typed.length() + 8);
        typed.codePoints().forEach(c -> append(out, c));
        return out.toString().strip().replaceAll(" +", " ").toLowerCase(Locale.ROOT);
    }

    private static void append(StringBuilder out, int c) {
        String vulgar = VulgarFractions.spelt(c);
        if (vulgar != null) {
            boolean afterDigit = out.length() > 0 && Character.isDigit(out.charAt(out.length() - 1));
            out.append(afterDigit ? " " : "").append(vulgar);
            return;
        }
        switch (c) {
            case '\u00a0', '\u2007', '\u2009', '\u202f', '\t', '\n', '\r' -> out.append(' ');
            case '\u2010', '\u2011', '\u2012', '\u2013', '\u2014', '\u2212' -> out.append('-');
            case '\u2018', '\u2019', '\u2032', '\u00b4' -> out.append('\'');
            case '\u201c', '\u201d', '\u2033' -> out.append('"');
            case '\u2044' -> out.append('/');
            default -> out.appendCodePoint(c);
        }
    }

    /**
     * The decimal in {@code tidy}, or null. {@code 9,413.50}, {@code 9413.5}, {@code 9 413,50} and {@code 9.413,50}
     * are the same; {@code 9,413} groups thousands, while {@code 9,41} and {@code 0,413} are decimals.
     */
    static @Nullable BigDecimal read(String tidy) {
        if (tidy.length() > LONGEST) {
            return null;
        }
        if (PLAIN.matcher(tidy).matches()) {
            return new BigDecimal(tidy.endsWith(".") ? tidy.substring(0, tidy.length() - 1) : tidy);
        }
        if (GROUPED.matcher(tidy).matches()) {
            String digits = tidy.replaceAll("[, ']", "");
            return new BigDecimal(digits.endsWith(".") ? digits.substring(0, digits.length() - 1) : digits);
        }
        if (GROUPED_BY_POINTS.matcher(tidy).matches()) {
            return new BigDecimal(tidy.replaceAll("[. ]", "").replace(',', '.'));
        }
        if (COMMA.matcher(tidy).matches()) {
            return new BigDecimal(tidy.replace(',', '.'));
        }
        return null;
    }

    /** A number or a mixed fraction ({@code 2 1/2}, {@code 2-1/2}, {@code 1/2}) to 10 places, or null. */
    static @Nullable BigDecimal readMixed(String tidy) {
        Matcher m = MIXED.matcher(tidy);
        if (!m.matches()) {
            return read(tidy);
        }
        BigDecimal denominator = new BigDecimal(m.group(3));
        if (denominator.signum() == 0) {
            return null;
        }
        BigDecimal whole = m.group(1) == null ? BigDecimal.ZERO : new BigDecimal(m.group(1));
        return whole.add(new BigDecimal(m.group(2)).divide(denominator, 10, RoundingMode.HALF_UP));
    }

    /** What was typed, short enough and harmless enough to repeat in a sentence. */
    static String shown(String typed) {
        String line = typed.codePoints()
                .limit(200)
                .map(c -> Character.isISOControl(c) || Character.getType(c) == Character.FORMAT ? ' ' : c)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString()
                .strip()
                .replaceAll("\\s+", " ");
        int end = line.offsetByCodePoints(0, Math.min(24, line.codePointCount(0, line.length())));
        return end < line.length() ? line.substring(0, end) + "..." : line;
    }

    /** No trailing zeros and no exponent, so that equal numbers are equal records and read well. */
    static BigDecimal plain(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }
}
