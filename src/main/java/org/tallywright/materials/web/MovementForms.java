package org.tallywright.materials.web;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.JobDesk;
import org.tallywright.materials.MovementDraft;
import org.tallywright.materials.StoreRoom;
import org.tallywright.shared.Money;

/** Writes a kept entry back into its form, and offers the jobs that take material. */
@Component
class MovementForms {
    private final JobDesk jobs;
    private final JdbcClient jdbc;

    MovementForms(JobDesk jobs, JdbcClient jdbc) {
        this.jobs = jobs;
        this.jdbc = jdbc;
    }

    MovementForm of(UUID id, StoreRoom.Found found) {
        MovementDraft draft = found.draft();
        UUID job = draft.jobId();
        String number = job == null ? "" : jobs.get(job).number();
        String price = "",
                freight = "",
                supplier = "",
                receipt = "",
                net = "",
                source = "",
                credit = "",
                size = "",
                gone = "";
        if (draft instanceof MovementDraft.Bought bought) {
            price = bought.price().toString();
            freight = blankZero(bought.freight());
            supplier = bought.supplier();
            receipt = bought.receiptNumber();
        } else if (draft instanceof MovementDraft.Taken taken) {
            net = taken.net() == null ? "" : taken.net().toString();
            source = taken.fromStock() ? "stock" : "job";
        } else if (draft instanceof MovementDraft.SentBack sent) {
            credit = sent.credit().toString();
        } else if (draft instanceof MovementDraft.Kept kept) {
            size = kept.size();
            credit = blankZero(kept.credit());
            gone = day(kept.goneOn());
        }
        return new MovementForm(
                id,
                found.version(),
                number,
                draft.materialId().toString(),
                draft.quantity().toString(),
                price,
                freight,
                supplier,
                receipt,
                net,
                source,
                credit,
                size,
                draft.on().toString(),
                gone,
                draft.note());
    }

    /** Open jobs by number, and the one that is chosen already; a helper works on running ones. */
    Map<String, String> jobChoices(@Nullable String chosen, boolean runningOnly) {
        Map<String, String> choices = new LinkedHashMap<>();
        jdbc.sql("""
                        select number, number || ' ' || title from job
                        where state = 'running' or (not ? and (state in ('bidding', 'lead') or number = ?)) order by (state = 'running') desc, number desc limit 200""").params(runningOnly, chosen == null ? "" : chosen).query(row -> {
            choices.put(row.getString(1), row.getString(2));
        });
        return choices;
    }

    private static String blankZero(Money amount) {
        return amount.isZero() ? "" : amount.toString();
    }

    private static String day(@Nullable LocalDate date) {
        return date == null ? "" : date.toString();
    }
}
