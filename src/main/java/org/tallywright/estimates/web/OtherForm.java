package org.tallywright.estimates.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.estimates.CostSort;
import org.tallywright.estimates.EstimateSheet;
import org.tallywright.estimates.OtherDraft;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Money;
import org.tallywright.shared.Typed;
import org.tallywright.web.FormReader;

/** Another cost as typed. */
record OtherForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Nullable String sort,
        @Nullable String description,
        @Nullable String amount,
        @Nullable String then) {

    static OtherForm blank() {
        return new OtherForm(Ids.next(), null, "other", "", "", "");
    }

    static OtherForm of(EstimateSheet.OtherRow row) {
        return new OtherForm(
                row.id(),
                row.version(),
                row.sort().code(),
                row.description(),
                row.amount().amount().toPlainString(),
                "");
    }

    @Nullable
    OtherDraft read(FormReader read) {
        UUID own = read.field("", () -> Picked.own(id));
        CostSort kind = read.field("sort", () -> sort == null ? CostSort.OTHER : CostSort.of(sort));
        String what = read.field("description", () -> Typed.requiredLine(Picked.text(description), 160));
        Money much = read.field("amount", () -> Money.of(Picked.text(amount)));
        if (read.refused() || own == null || kind == null || what == null || much == null) {
            return null;
        }
        return new OtherDraft(own, version, kind, what, much);
    }

    boolean another() {
        return "another".equals(then);
    }
}
