package org.tallywright.materials;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.catalog.Materials;
import org.tallywright.jobs.JobDesk;
import org.tallywright.shared.Stale;

/** Writes an entry down field by field, so that two versions of it can be laid side by side. */
@Component
class MovementWords {
    private final Materials catalog;
    private final JobDesk jobs;

    MovementWords(Materials catalog, JobDesk jobs) {
        this.catalog = catalog;
        this.jobs = jobs;
    }

    /** Both versions, in the order of the form; both drafts are of one kind. */
    List<Stale.Row> beside(MovementDraft theirs, MovementDraft yours) {
        Map<String, String> kept = words(theirs);
        List<Stale.Row> rows = new ArrayList<>();
        words(yours).forEach((label, typed) -> rows.add(new Stale.Row(label, kept.getOrDefault(label, ""), typed)));
        return rows;
    }

    private Map<String, String> words(MovementDraft draft) {
        Map<String, String> words = new LinkedHashMap<>();
        words.put(
                "Material",
                catalog.find(draft.materialId()).map(MaterialCard::name).orElse(""));
        words.put("Job", job(draft.jobId()));
        words.put("Day", draft.on().toString());
        words.put("Quantity", draft.quantity().toString());
        if (draft instanceof MovementDraft.Bought bought) {
            words.put("Unit price", bought.price().toString());
            words.put("Freight", bought.freight().toString());
            words.put("Supplier", bought.supplier());
            words.put("Receipt", bought.receiptNumber());
        } else if (draft instanceof MovementDraft.Taken taken) {
            words.put("In the work", text(taken.net()));
            words.put("From", taken.fromStock() ? "stock" : "bought for the job");
        } else if (draft instanceof MovementDraft.SentBack sent) {
            words.put("Credit", sent.credit().toString());
        } else if (draft instanceof MovementDraft.Kept kept) {
            words.put("Size", kept.size());
            words.put("Credit", kept.credit().toString());
            words.put("Used up on", text(kept.goneOn()));
        }
        words.put("Note", draft.note());
        return words;
    }

    private String job(@Nullable UUID id) {
        return id == null ? "stock" : jobs.get(id).number();
    }

    private static String text(@Nullable Object value) {
        return value == null ? "" : value.toString();
    }
}
