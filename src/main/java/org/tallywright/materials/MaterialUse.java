package org.tallywright.materials;

import jakarta.persistence.Entity;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.UnitPrice;

@Entity
class MaterialUse extends Movement {
    private @Nullable Quantity netQuantity;
    private String source;
    private @Nullable UnitPrice unitPrice;
    private LocalDate usedOn;
    private @Nullable UUID usedBy;

    @SuppressWarnings("NullAway.Init")
    MaterialUse() {}

    /** @param stockPrice what the stock costs on that day; null for material bought for the job */
    @SuppressWarnings("NullAway.Init")
    MaterialUse(UUID id, MovementDraft.Taken draft, @Nullable UnitPrice stockPrice, UUID by) {
        super(id, draft);
        this.usedBy = by;
        take(draft);
        this.unitPrice = stockPrice;
    }

    private void take(MovementDraft.Taken draft) {
        netQuantity = draft.net();
        source = draft.fromStock() ? "stock" : "job";
        usedOn = draft.on();
    }

    @Override
    MovementDraft draft() {
        return new MovementDraft.Taken(common(), netQuantity, source.equals("stock"), usedOn);
    }

    @Override
    void correct(MovementDraft draft) {
        super.correct(draft);
        take((MovementDraft.Taken) draft);
    }

    void price(@Nullable UnitPrice stockPrice) {
        unitPrice = stockPrice;
    }
}
