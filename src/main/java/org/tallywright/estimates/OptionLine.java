package org.tallywright.estimates;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** One line of the working sum that an option holds; one of the three ids is there. */
@Embeddable
record OptionLine(
        UUID jobId,
        @Nullable UUID taskId,
        @Column(name = "estimate_material_id") @Nullable UUID materialId,
        @Column(name = "estimate_other_id") @Nullable UUID otherId) {}
