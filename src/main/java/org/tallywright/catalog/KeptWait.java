package org.tallywright.catalog;

import jakarta.persistence.Embeddable;
import java.util.UUID;
import org.tallywright.shared.Ids;

/** A wait as a row of its task kind. */
@Embeddable
record KeptWait(UUID id, int position, String what, int minutes, String basis) {
    static KeptWait of(int position, KindWait wait) {
        return new KeptWait(Ids.next(), position, wait.what(), wait.minutes(), wait.basis());
    }

    KindWait plain() {
        return new KindWait(what, minutes, basis);
    }
}
