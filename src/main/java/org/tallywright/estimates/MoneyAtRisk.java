package org.tallywright.estimates;

import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/**
 * What an offer may cost and leave, at its price before tax. For the owner only.
 *
 * @param confidence 50, 80 or 90 where the price was made at that; null for the named percentage
 * @param expected cost that many such jobs come to, each
 * @param low together with {@code high} the range of the cost that holds four times in five
 * @param likely as often passed as not
 * @param p80 stayed under four times in five; another thing than the range
 * @param loss how many of a hundred such jobs cost more than the price
 * @param profit price - expected cost
 */
public record MoneyAtRisk(
        @Nullable Integer confidence,
        Money expected,
        Money low,
        Money likely,
        Money high,
        Money p80,
        Percent loss,
        Money profit,
        CostBehind behind) {}
