package org.tallywright.shop;

import java.math.BigDecimal;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/**
 * How a new bid is paid where nothing else is said, and how much may be asked before the work begins. Limits differ from
 * state to state and are the owner's to find out; local law decides.
 *
 * @param plan one step a line, or empty
 * @param depositPercent of the total, or null for no such limit
 * @param depositMost in the shop's currency, or null for no such limit
 * @param place whose limit it is, or empty
 */
public record PaymentRule(
        String plan,
        @Nullable BigDecimal depositPercent,
        @Nullable BigDecimal depositMost,
        String place) {

    /** "10 %, at most 1000.00 (California)". */
    public String limitInWords() {
        String share = depositPercent == null ? "no share" : Percent.of(depositPercent) + " %";
        String most = depositMost == null ? "no sum" : "at most " + Money.of(depositMost);
        return share + ", " + most + (place.isEmpty() ? "" : " (" + place + ")");
    }

    /** The most that may be asked first of a total: the lesser of both limits; empty without one. */
    public Optional<Money> most(Money total) {
        Money share = depositPercent == null ? null : total.times(Percent.of(depositPercent));
        Money sum = depositMost == null ? null : Money.of(depositMost);
        if (share == null || sum == null) {
            return Optional.ofNullable(share == null ? sum : share);
        }
        return Optional.of(share.compareTo(sum) < 0 ? share : sum);
    }
}
