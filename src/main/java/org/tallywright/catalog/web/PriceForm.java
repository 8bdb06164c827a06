package org.tallywright.catalog.web;

import java.time.DateTimeException;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Typed;
import org.tallywright.shared.UnitPrice;

/** A dated price as typed; {@code corrects} holds the price of that day that the page has shown. */
record PriceForm(
        @Nullable String from,
        @Nullable String price,
        @Nullable String basis,
        @Nullable String corrects) {
    PriceForm correcting(@Nullable String words) {
        return new PriceForm(from, price, basis, words);
    }

    LocalDate day() {
        try {
            LocalDate day = LocalDate.parse(Picked.text(from).strip());
            if (day.getYear() >= 2000 && day.getYear() < 2200) {
                return day;
            }
        } catch (DateTimeException notADate) {
            // Falls through to the one sentence for both.
        }
        throw new NotUnderstood("Write the day like 2026-11-24.");
    }

    UnitPrice unitPrice() {
        return UnitPrice.of(Picked.text(price));
    }

    String source() {
        return Typed.line(Picked.text(basis), 200);
    }
}
