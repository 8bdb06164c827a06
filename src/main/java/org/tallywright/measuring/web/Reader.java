package org.tallywright.measuring.web;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.util.Locale;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.tallywright.measuring.Air;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Units;

/** What the forms of a site measure have in common. */
final class Reader {
    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("uuuu-M-d").withResolverStyle(ResolverStyle.STRICT);
    private static final Pattern DEGREES = Pattern.compile("([-\u2212]?\\d{1,3}(?:[.,]\\d{1,2})?) ?\u00b0? ?([fFcC])?");
    private static final Pattern PERCENT = Pattern.compile("(\\d{1,3}(?:[.,]\\d)?) ?%?");
    private static final BigDecimal COLDEST = BigDecimal.valueOf(-40);
    private static final BigDecimal WARMEST = BigDecimal.valueOf(60);
    private static final BigDecimal ALL = BigDecimal.valueOf(100);

    private Reader() {}

    static UUID own(@Nullable UUID id) {
        if (id == null) {
            throw new Refused("The form did not arrive whole. Reload the page and try again.");
        }
        return id;
    }

    static UUID id(String typed) {
        try {
            return UUID.fromString(typed.strip());
        } catch (IllegalArgumentException e) {
            throw new NotUnderstood("Pick a piece of this job.");
        }
    }

    static LocalDate day(String typed) {
        try {
            LocalDate day = LocalDate.parse(typed.strip(), DAY);
            if (day.getYear() < 2000 || day.getYear() > 2199) {
                throw new NotUnderstood("Give a day between the years 2000 and 2199.");
            }
            return day;
        } catch (DateTimeParseException e) {
            throw new NotUnderstood("Give a day as 2026-11-25.");
        }
    }

    /** Degrees Celsius; a number without F or C is of the shop's way of measuring. */
    static BigDecimal celsius(String typed, Units bare) {
        Matcher read = DEGREES.matcher(typed.strip());
        if (!read.matches()) {
            throw new NotUnderstood(
                    "Give a temperature, such as " + (bare == Units.METRIC ? "21 or 70 F." : "70 or 21 C."));
        }
        BigDecimal number = new BigDecimal(read.group(1).replace(',', '.').replace('\u2212', '-'));
        String letter = read.group(2) == null ? "" : read.group(2).toUpperCase(Locale.ROOT);
        boolean fahrenheit = letter.isEmpty() ? bare == Units.IMPERIAL : letter.equals("F");
        BigDecimal celsius =
                fahrenheit ? Air.ofFahrenheit(number, BigDecimal.ZERO).celsius() : number;
        if (celsius.compareTo(COLDEST) < 0 || celsius.compareTo(WARMEST) > 0) {
            throw new NotUnderstood("Give a temperature from -40 to 140 F (-40 to 60 C).");
        }
        return celsius;
    }

    static BigDecimal humidity(String typed) {
        BigDecimal percent = percent(typed, "Give the humidity in percent, such as 45.");
        if (percent.compareTo(ALL) > 0) {
            throw new NotUnderstood("Humidity is from 0 to 100 percent.");
        }
        return percent;
    }

    static BigDecimal moisture(String typed) {
        BigDecimal percent = percent(typed, "Give the moisture in percent, such as 7.5.");
        if (percent.signum() == 0 || percent.compareTo(BigDecimal.valueOf(30)) > 0) {
            throw new NotUnderstood("Moisture is above 0 and up to 30 percent; wetter wood does not move yet.");
        }
        return percent;
    }

    private static BigDecimal percent(String typed, String sentence) {
        Matcher read = PERCENT.matcher(typed.strip());
        if (!read.matches()) {
            throw new NotUnderstood(sentence);
        }
        return new BigDecimal(read.group(1).replace(',', '.'));
    }
}
