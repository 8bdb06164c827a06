package org.tallywright.materials;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.UnitPrice;

@Entity
class Purchase extends Movement {
    private UnitPrice unitPrice;

    @Column(name = "freight_amount")
    private Money freight;

    private Money amount;
    private String supplier;
    private String receiptNumber;
    private LocalDate boughtOn;
    private @Nullable UUID boughtBy;

    @SuppressWarnings("NullAway.Init")
    Purchase() {}

    @SuppressWarnings("NullAway.Init")
    Purchase(UUID id, MovementDraft.Bought draft, UUID by) {
        super(id, draft);
        this.boughtBy = by;
        take(draft);
    }

    private void take(MovementDraft.Bought draft) {
        unitPrice = draft.price();
        freight = draft.freight();
        amount = draft.amount();
        supplier = draft.supplier();
        receiptNumber = draft.receiptNumber();
        boughtOn = draft.on();
    }

    @Override
    MovementDraft draft() {
        return new MovementDraft.Bought(common(), unitPrice, freight, supplier, receiptNumber, boughtOn);
    }

    @Override
    void correct(MovementDraft draft) {
        super.correct(draft);
        take((MovementDraft.Bought) draft);
    }
}
