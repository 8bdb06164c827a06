package org.tallywright.shared;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * When a shop's hours are overtime. Local law decides; some states count by the day as well.
 *
 * @param week hours of a week beyond which they are overtime, or null where no such rule holds
 * @param day hours of a day beyond which they are overtime, or null where no such rule holds
 * @param premiumPercent of the regular rate, on top of the pay for the hours
 */
public record OvertimeRule(@Nullable Hours week, @Nullable Hours day, BigDecimal premiumPercent) {
    /** United States federal rule: over 40 hours a week, half the regular rate on top (29 CFR 778.110). */
    public static final OvertimeRule FEDERAL = new OvertimeRule(Overtime.FORTY, null, new BigDecimal(50));

    private static final BigDecimal HUNDRED = new BigDecimal(100);

    /** Splits one week; an hour that is overtime by its day is not counted by the week once more. */
    public Overtime split(Collection<Hours> days) {
        int all = 0;
        int over = 0;
        for (Hours worked : days) {
            all += worked.minutes();
            over += day == null ? 0 : Math.max(0, worked.minutes() - day.minutes());
        }
        over += week == null ? 0 : Math.max(0, all - over - week.minutes());
        return new Overtime(new Hours(all - over), new Hours(over));
    }

    /** What the overtime of that week costs on top, to the cent. */
    public Money premium(List<Overtime.Stretch> worked, Hours overtime) {
        return Overtime.premium(
                worked, Money.ZERO, overtime, premiumPercent.divide(HUNDRED, java.math.MathContext.DECIMAL64));
    }

    /** {@code over 40 h a week}, {@code over 8 h a day or 40 h a week}; empty where no rule holds. */
    public String inWords() {
        String byDay = day == null ? "" : day + " a day";
        String byWeek = week == null ? "" : week + " a week";
        return byDay.isEmpty() && byWeek.isEmpty()
                ? ""
                : "over " + byDay + (byDay.isEmpty() || byWeek.isEmpty() ? "" : " or ") + byWeek;
    }
}
