package org.tallywright.catalog;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.tallywright.shared.Hours;
import org.tallywright.shared.NotUnderstood;

/** How long a wait lasts, as people say it: {@code 30m}, {@code 4 h}, {@code 3 days}. */
public final class WaitTime {
    private static final int DAY = 24 * 60;
    private static final Pattern DAYS = Pattern.compile("(?i)\\s*(\\d{1,3}(?:[.,]\\d{1,2})?)\\s*(?:d|days?)\\s*");

    private WaitTime() {}

    /**
     * Whole minutes, from 1 up to 365 days; a number alone is hours.
     *
     * @throws NotUnderstood with a sentence for the person who typed it
     */
    public static int minutes(String typed) {
        Matcher days = DAYS.matcher(typed);
        int minutes = days.matches()
                ? new BigDecimal(days.group(1).replace(',', '.'))
                        .multiply(BigDecimal.valueOf(DAY))
                        .setScale(0, RoundingMode.HALF_UP)
                        .intValueExact()
                : Hours.parseTotal(typed).minutes();
        if (minutes < 1 || minutes > KindWait.MOST_MINUTES) {
            throw new NotUnderstood("A wait is between a minute and 365 days; write it like 30m, 4 h or 3 days.");
        }
        return minutes;
    }

    /** {@code 30 min}, {@code 4 h}, {@code 5 days}; {@link #minutes} reads it back. */
    public static String words(int minutes) {
        if (minutes >= 2 * DAY && minutes % DAY == 0) {
            return minutes / DAY + " days";
        }
        return new Hours(minutes).toString();
    }
}
