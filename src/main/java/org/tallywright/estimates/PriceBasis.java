package org.tallywright.estimates;

import org.tallywright.shared.Hours;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/**
 * Everything the price is made of.
 *
 * @param hours expected person-hours
 * @param labourRate burdened cost of one hour
 * @param overheadRate shop overhead for one hour
 * @param material the material lines' sum, freight included
 * @param other the other costs' sum
 * @param margin profit as a share of the price
 * @param roundingStep the price goes to the nearest whole multiple of it; zero leaves it as it is
 * @param tax on top of the price
 */
public record PriceBasis(
        Hours hours,
        Money labourRate,
        Money overheadRate,
        Money material,
        Money other,
        Contingency contingency,
        Margin margin,
        Money roundingStep,
        Percent tax) {}
