package org.tallywright.estimates;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderBy;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/** The rates and words of a job's working sum. Its row is made, with the shop's usual rates, when it is first needed. */
@Entity
@Table(name = "estimate")
class Estimate {
    @Id
    private UUID jobId;

    /** Given by hand; where null the crew's shares make the rate. */
    private @Nullable Money labourRate;

    private Money overheadRate;
    private Percent contingencyPercent;
    private String contingencyName;

    @Column(name = "margin_percent")
    private Margin margin;

    @Column(name = "rounding_step_amount")
    private Money roundingStep;

    private Percent taxPercent;
    private String scope;
    private String exclusions;
    private String payments;
    private String terms;

    @ElementCollection(fetch = FetchType.EAGER)
    @CollectionTable(name = "estimate_crew", joinColumns = @JoinColumn(name = "job_id"))
    @OrderBy("sharePercent desc, personId")
    private Set<CrewShare> crew = new LinkedHashSet<>();

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected Estimate() {}

    @SuppressWarnings("NullAway.Init")
    Estimate(UUID jobId, EstimateRates rates, BidWords words) {
        this.jobId = jobId;
        price(rates);
        word(words);
    }

    void price(EstimateRates rates) {
        labourRate = rates.labourRate();
        overheadRate = rates.overheadRate();
        contingencyPercent = rates.contingencyPercent();
        contingencyName = rates.contingencyName();
        margin = rates.margin();
        roundingStep = rates.roundingStep();
        taxPercent = rates.taxPercent();
        crew.retainAll(rates.crew());
        crew.addAll(rates.crew());
    }

    void word(BidWords words) {
        scope = words.scope();
        exclusions = words.exclusions();
        payments = words.payments();
        terms = words.terms();
    }

    EstimateRates rates() {
        return new EstimateRates(
                labourRate,
                List.copyOf(crew),
                overheadRate,
                contingencyPercent,
                contingencyName,
                margin,
                roundingStep,
                taxPercent);
    }

    BidWords words() {
        return new BidWords(scope, exclusions, payments, terms);
    }

    int version() {
        return version == null ? 0 : version;
    }

    /** A form made before the row was there showed the same usual rates that it was made with. */
    boolean isAt(@Nullable Integer seen) {
        return version != null && version.equals(seen == null ? Integer.valueOf(0) : seen);
    }
}
