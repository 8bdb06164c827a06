package org.tallywright.materials;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;

@Entity
class MaterialReturn extends Movement {
    @Column(name = "credit_amount")
    private Money credit;

    private LocalDate returnedOn;
    private @Nullable UUID returnedBy;

    @SuppressWarnings("NullAway.Init")
    MaterialReturn() {}

    @SuppressWarnings("NullAway.Init")
    MaterialReturn(UUID id, MovementDraft.SentBack draft, UUID by) {
        super(id, draft);
        this.returnedBy = by;
        take(draft);
    }

    private void take(MovementDraft.SentBack draft) {
        credit = draft.credit();
        returnedOn = draft.on();
    }

    @Override
    MovementDraft draft() {
        return new MovementDraft.SentBack(common(), credit, returnedOn);
    }

    @Override
    void correct(MovementDraft draft) {
        super.correct(draft);
        take((MovementDraft.SentBack) draft);
    }
}
