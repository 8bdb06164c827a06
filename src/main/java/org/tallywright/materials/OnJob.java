package org.tallywright.materials;

import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;

/** Keeps a job from giving back or keeping more of a material than came to it. */
@Component
class OnJob {
    private final JdbcClient jdbc;

    OnJob(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * @param was the entry as it stands now; null for a new one
     * @throws Refused at the quantity
     */
    void guard(MovementDraft draft, @Nullable MovementDraft was) {
        UUID job = draft.jobId();
        if (job == null || draft.kind() == Kind.PURCHASES || draft.kind() == Kind.USES) {
            return;
        }
        BigDecimal left = jdbc.sql("select charged_quantity from job_material where job_id = ? and material_id = ?")
                .params(job, draft.materialId())
                .query(BigDecimal.class)
                .optional()
                .orElse(BigDecimal.ZERO);
        boolean sameStock =
                was != null && job.equals(was.jobId()) && was.materialId().equals(draft.materialId());
        BigDecimal most = was != null && sameStock ? left.add(was.quantity().amount()) : left;
        if (draft.quantity().amount().compareTo(most) > 0) {
            throw new Refused(
                    "quantity",
                    "Only " + new Quantity(most.max(BigDecimal.ZERO))
                            + " of it came to this job and is not given back yet. Enter the purchase first.");
        }
    }
}
