package org.tallywright.estimates;

import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;
import org.tallywright.shared.Refused;

/** How large the figures of an estimate may be; each refusal names the field of the form. */
final class Limits {
    /** Of one line or of a whole price: ten million, more than any job of such a shop. */
    private static final Money MOST = Money.of(10_000_000);

    private static final Money MOST_AN_HOUR = Money.of(10_000);
    private static final int PLACES = 3;

    private Limits() {}

    static void check(MaterialCost cost) {
        if (cost.net().quantity().isZero()) {
            throw new Refused("net", "Write how much ends up in the work; more than nothing.");
        }
        if (cost.purchase().amount().compareTo(MOST.amount()) > 0) {
            throw new Refused("net", "That is more than can be bought for one job here.");
        }
        check("freight", cost.freight());
        check("price", cost.amount());
    }

    static void check(String field, Money amount) {
        if (amount.isNegative()) {
            throw new Refused(field, "A cost cannot be negative here.");
        }
        if (amount.compareTo(MOST) > 0) {
            throw new Refused(field, "That comes to more than can be kept here.");
        }
    }

    static void check(PriceSum sum) {
        if (sum.total().compareTo(MOST) > 0) {
            throw new Refused("That comes to a price of more than " + MOST + "; look at quantities, rates and margin.");
        }
    }

    static void check(EstimateRates rates) {
        if (rates.labourRate() != null) {
            hourly("labourRate", rates.labourRate());
        }
        hourly("overheadRate", rates.overheadRate());
        percent("contingency", rates.contingencyPercent());
        percent("margin", rates.margin().percent());
        percent("tax", rates.taxPercent());
        check("roundingStep", rates.roundingStep());
        for (CrewShare share : rates.crew()) {
            percent("crew", share.sharePercent());
        }
    }

    private static void hourly(String field, Money rate) {
        if (rate.isNegative() || rate.compareTo(MOST_AN_HOUR) > 0) {
            throw new Refused(field, "A rate lies between 0 and " + MOST_AN_HOUR + " an hour.");
        }
    }

    private static void percent(String field, Percent percent) {
        if (percent.amount().signum() < 0
                || percent.amount().compareTo(Percent.of(100).amount()) > 0
                || percent.amount().scale() > PLACES) {
            throw new Refused(field, "Write a percentage from 0 to 100 with up to three places.");
        }
    }
}
