package org.tallywright.estimates;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;

/** Another cost as it was bid. */
@Embeddable
public record BidOther(
        String sort,
        String description,
        Money amount,
        @Column(name = "estimate_other_id") @Nullable UUID sourceId) {}
