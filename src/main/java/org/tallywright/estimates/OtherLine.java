package org.tallywright.estimates;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.Stale;

/** A cost of a job that is neither hours nor material: delivery, disposal, a hired lift. */
@Entity
@Table(name = "estimate_other")
class OtherLine {
    @Id
    private UUID id;

    private UUID jobId;
    private String sort;
    private String description;
    private Money amount;
    private int position;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected OtherLine() {}

    @SuppressWarnings("NullAway.Init")
    OtherLine(UUID id, UUID jobId, int position) {
        this.id = id;
        this.jobId = jobId;
        this.position = position;
    }

    void say(OtherDraft draft) {
        sort = draft.sort().code();
        description = draft.description();
        amount = draft.amount();
    }

    boolean says(OtherDraft draft) {
        return sort.equals(draft.sort().code())
                && description.equals(draft.description())
                && amount.equals(draft.amount());
    }

    /** This line beside another version of it, for somebody who was slower. */
    List<Stale.Row> beside(OtherDraft other) {
        return List.of(
                new Stale.Row("Sort", CostSort.of(sort).label(), other.sort().label()),
                new Stale.Row("What it is", description, other.description()),
                new Stale.Row("Amount", amount.toString(), other.amount().toString()));
    }

    boolean isAt(@Nullable Integer seen) {
        return version != null && version.equals(seen);
    }

    boolean isOf(UUID job) {
        return jobId.equals(job);
    }
}
