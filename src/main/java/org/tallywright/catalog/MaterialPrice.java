package org.tallywright.catalog;

import java.math.RoundingMode;
import java.time.LocalDate;
import org.tallywright.shared.UnitPrice;

/** The price of one unit of a material from a day on, until the next one. */
public record MaterialPrice(LocalDate from, UnitPrice price, String basis) {
    /** As a page writes it, so that a save can say beside which price it was made. */
    public String words() {
        String amount = price.amount().setScale(4, RoundingMode.HALF_UP).toPlainString();
        return amount.replaceFirst("0{1,2}$", "") + (basis.isEmpty() ? "" : " (" + basis + ")");
    }
}
