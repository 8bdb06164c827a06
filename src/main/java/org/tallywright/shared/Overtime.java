package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;

/**
 * Weekly overtime over 40 hours at half the regular rate on top (29 CFR 778.110 and 778.115, United States federal
 * rules only). Each workweek stands alone. State and local law may give more; local law decides.
 *
 * @param straight hours up to the threshold
 * @param overtime hours over it
 */
public record Overtime(Hours straight, Hours overtime) {
    public static final Hours FORTY = new Hours(40 * 60);
    private static final BigDecimal HALF = new BigDecimal("0.5");
    private static final BigDecimal SIXTY = BigDecimal.valueOf(60);

    /** Hours of one week at one rate. */
    public record Stretch(Hours hours, BigDecimal ratePerHour) {}

    /** Splits the hours of one workweek at 40. */
    public static Overtime ofWeek(Hours worked) {
        return ofWeek(worked, FORTY);
    }

    public static Overtime ofWeek(Hours worked, Hours threshold) {
        Hours over = new Hours(Math.max(0, worked.minus(threshold).minutes()));
        return new Overtime(worked.minus(over), over);
    }

    /** All pay of the week but the premium, over all hours of the week; unrounded, zero for no hours. */
    public static BigDecimal regularRate(List<Stretch> week, Money bonus) {
        int minutes = worked(week).minutes();
        return minutes == 0
                ? BigDecimal.ZERO
                : earned(week, bonus).multiply(SIXTY).divide(BigDecimal.valueOf(minutes), MathContext.DECIMAL128);
    }

    /** Half the regular rate for each hour over 40. */
    public static Money premium(List<Stretch> week, Money bonus) {
        return premium(week, bonus, ofWeek(worked(week)).overtime, HALF);
    }

    /**
     * What overtime costs on top of the pay for its hours.
     *
     * @param share of the regular rate, 0.5 for half
     */
    public static Money premium(List<Stretch> week, Money bonus, Hours overtime, BigDecimal share) {
        BigDecimal minutes = BigDecimal.valueOf(overtime.minutes());
        return new Money(
                regularRate(week, bonus).multiply(share).multiply(minutes).divide(SIXTY, MathContext.DECIMAL128));
    }

    /** Pay of the hours themselves, to the cent. */
    public static Money straightPay(List<Stretch> week) {
        return new Money(earned(week, Money.ZERO));
    }

    /** Straight pay, bonus and premium, each rounded to the cent. */
    public static Money pay(List<Stretch> week, Money bonus) {
        return new Money(earned(week, bonus)).plus(premium(week, bonus));
    }

    private static Hours worked(List<Stretch> week) {
        return Hours.sum(week.stream().map(Stretch::hours).toList());
    }

    private static BigDecimal earned(List<Stretch> week, Money bonus) {
        BigDecimal minuteRates = week.stream()
                .map(s -> s.ratePerHour.multiply(BigDecimal.valueOf(s.hours.minutes())))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        return minuteRates.divide(SIXTY, MathContext.DECIMAL128).add(bonus.amount());
    }
}
