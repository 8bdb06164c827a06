package org.tallywright.shop;

import java.math.BigDecimal;
import java.time.ZoneId;
import java.util.Currency;
import org.tallywright.shared.OvertimeRule;
import org.tallywright.shared.Units;

/**
 * The shop's settings.
 *
 * @param dayMinutes the usual working day
 * @param overheadRate cost that no job carries, in the shop's currency for each logged hour
 * @param marginPercent profit over price that a new estimate starts from
 * @param roundingStep prices are rounded to this step, in the shop's currency; 0 = to the cent
 * @param demo whether the demo scenario was loaded into this shop
 */
public record Shop(
        String name,
        ZoneId zone,
        Units units,
        Currency currency,
        int dayMinutes,
        OvertimeRule overtime,
        BigDecimal overheadRate,
        BigDecimal marginPercent,
        BigDecimal contingencyPercent,
        BigDecimal roundingStep,
        BigDecimal taxPercent,
        String taxLabel,
        int bidValidDays,
        String bidTerms,
        PaymentRule payments,
        String contactLines,
        boolean demo,
        int version) {}
