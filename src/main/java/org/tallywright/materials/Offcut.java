package org.tallywright.materials;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;

@Entity
class Offcut extends Movement {
    private String size;

    @Column(name = "credit_amount")
    private Money credit;

    private LocalDate keptOn;
    private @Nullable UUID keptBy;
    private @Nullable LocalDate goneOn;

    @SuppressWarnings("NullAway.Init")
    Offcut() {}

    @SuppressWarnings("NullAway.Init")
    Offcut(UUID id, MovementDraft.Kept draft, UUID by) {
        super(id, draft);
        this.keptBy = by;
        take(draft);
    }

    private void take(MovementDraft.Kept draft) {
        size = draft.size();
        credit = draft.credit();
        keptOn = draft.on();
        goneOn = draft.goneOn();
    }

    @Override
    MovementDraft draft() {
        return new MovementDraft.Kept(common(), size, credit, keptOn, goneOn);
    }

    @Override
    void correct(MovementDraft draft) {
        super.correct(draft);
        take((MovementDraft.Kept) draft);
    }

    boolean isGone() {
        return goneOn != null;
    }

    void gone(LocalDate on) {
        goneOn = on;
    }
}
