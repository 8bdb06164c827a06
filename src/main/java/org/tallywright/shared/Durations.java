package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Durations as people write them. */
final class Durations {
    private static final String MINUTES_WORD = "(?:m|min|mins|minute|minutes)\\.?";
    private static final String HOURS_WORD = "(?:h|hr|hrs|hour|hours)\\.?";
    private static final Pattern CLOCK = Pattern.compile("(\\d{1,6}):(\\d{1,2})(?: ?" + HOURS_WORD + ")?");
    private static final Pattern MINUTES = Pattern.compile("(.{1,24}?) ?" + MINUTES_WORD);
    private static final Pattern HOURS = Pattern.compile("(.{1,24}?) ?" + HOURS_WORD);
    private static final Pattern BOTH =
            Pattern.compile("(\\d{1,6}) ?" + HOURS_WORD + "(?: and)? ?(\\d{1,3})(?: ?" + MINUTES_WORD + ")?");
    private static final BigDecimal SIXTY = BigDecimal.valueOf(60);

    private Durations() {}

    /** @param note said beside the result when something was rounded */
    record Read(Hours hours, @Nullable String note) {}

    static Read read(String typed, int mostMinutes) {
        String tidy = Decimals.tidy(typed);
        if (tidy.isEmpty()) {
            throw new NotUnderstood("Write how long it took, such as 2:30, 2.5 or 45m.");
        }
        if (tidy.startsWith("-") && tidy.length() > 1 && Character.isDigit(tidy.charAt(1))) {
            throw new NotUnderstood("Hours cannot be negative.");
        }
        BigDecimal minutes = tidy.length() > Decimals.LONGEST ? null : minutes(tidy, typed);
        if (minutes == null) {
            throw new NotUnderstood(
                    "\"" + Decimals.shown(typed) + "\" is not a length of time; write it like 2:30, 2.5, 2h30 or 45m.");
        }
        boolean oneEntry = mostMinutes <= Hours.DAY;
        if (minutes.signum() == 0 && oneEntry) {
            throw new NotUnderstood("Nothing was worked in 0 hours; leave the box empty instead.");
        }
        if (minutes.compareTo(BigDecimal.valueOf(mostMinutes)) > 0) {
            throw new NotUnderstood(oneEntry ? tooLong(tidy, typed) : "That is more hours than can be kept here.");
        }
        return rounded(minutes, oneEntry);
    }

    private static Read rounded(BigDecimal minutes, boolean oneEntry) {
        int whole = minutes.setScale(0, RoundingMode.HALF_UP).intValueExact();
        if (whole == 0 && oneEntry) {
            throw new NotUnderstood("That is less than a minute.");
        }
        boolean exact = minutes.compareTo(BigDecimal.valueOf(whole)) == 0;
        return new Read(new Hours(whole), exact ? null : "rounded to the minute");
    }

    private static @Nullable BigDecimal minutes(String tidy, String typed) {
        Matcher clock = CLOCK.matcher(tidy);
        if (clock.matches()) {
            return hoursAndMinutes(clock.group(1), clock.group(2), typed);
        }
        Matcher both = BOTH.matcher(tidy);
        if (both.matches()) {
            return hoursAndMinutes(both.group(1), both.group(2), typed);
        }
        Matcher minutes = MINUTES.matcher(tidy);
        if (minutes.matches()) {
            return Decimals.readMixed(minutes.group(1));
        }
        Matcher hours = HOURS.matcher(tidy);
        BigDecimal decimal = Decimals.readMixed(hours.matches() ? hours.group(1) : tidy);
        // 1/3 of an hour comes as 0.3333333333; six places of a minute hide that tail and keep every typed digit.
        return decimal == null ? null : decimal.multiply(SIXTY).setScale(6, RoundingMode.HALF_UP);
    }

    private static BigDecimal hoursAndMinutes(String hours, String minutes, String typed) {
        if (Integer.parseInt(minutes) > 59) {
            throw new NotUnderstood("In \"" + Decimals.shown(typed) + "\" the minutes after the hours go up to 59.");
        }
        return new BigDecimal(hours).multiply(SIXTY).add(new BigDecimal(minutes));
    }

    private static String tooLong(String tidy, String typed) {
        String start = "\"" + Decimals.shown(typed) + "\" is more than a day";
        if (tidy.matches("[1-9][1-9]")) {
            return tidy + " is more than a day; did you mean " + tidy.charAt(0) + "." + tidy.charAt(1) + "?";
        }
        if (tidy.matches("[1-9]0")) {
            return tidy + " is more than a day; did you mean " + tidy + "m?";
        }
        if (tidy.matches("[1-9][0-5]\\d")) {
            return tidy + " is more than a day; did you mean " + tidy.charAt(0) + ":" + tidy.substring(1) + "?";
        }
        return start + "; one entry holds up to 24 hours.";
    }
}
