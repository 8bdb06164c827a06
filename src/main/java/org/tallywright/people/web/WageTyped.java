package org.tallywright.people.web;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;
import org.tallywright.shared.Refused;
import org.tallywright.web.FormReader;

/** Pay as read from the form: amount per hour in the shop's currency, burden in percent of the wage. */
record WageTyped(LocalDate from, BigDecimal wage, BigDecimal burden) {
    private static final BigDecimal MOST = new BigDecimal(10_000);
    private static final BigDecimal MOST_BURDEN = new BigDecimal(300);

    static @Nullable WageTyped read(WageForm form, FormReader read) {
        LocalDate from = read.field("from", () -> date(form.from()));
        BigDecimal wage =
                read.field("wage", () -> within(Money.of(text(form.wage())).amount(), MOST));
        BigDecimal burden = read.field(
                "burden", () -> within(Percent.of(text(form.burden())).amount(), MOST_BURDEN));
        return from == null || wage == null || burden == null ? null : new WageTyped(from, wage, burden);
    }

    private static LocalDate date(@Nullable String typed) {
        try {
            LocalDate date = LocalDate.parse(text(typed).strip());
            if (date.getYear() < 1950 || date.getYear() > 2199) {
                throw new Refused("from", "This date is too far away.");
            }
            return date;
        } catch (DateTimeParseException notADate) {
            throw new Refused("from", "Give the first day, such as 2026-11-25.");
        }
    }

    private static BigDecimal within(BigDecimal value, BigDecimal most) {
        if (value.signum() < 0 || value.compareTo(most) > 0) {
            throw new Refused("Give a figure between 0 and " + most + ".");
        }
        return value;
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }
}
