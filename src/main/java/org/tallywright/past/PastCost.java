package org.tallywright.past;

import java.util.UUID;
import org.tallywright.estimates.CostSort;
import org.tallywright.shared.Money;

/** Another cost of a past job as it was estimated; for the owner only. */
public record PastCost(UUID id, CostSort sort, String description, Money amount) {}
