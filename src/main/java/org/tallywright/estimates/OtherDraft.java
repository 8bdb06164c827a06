package org.tallywright.estimates;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;

/**
 * Another cost as typed.
 *
 * @param version the one that was read, or null for a line that the page takes for new
 */
public record OtherDraft(UUID id, @Nullable Integer version, CostSort sort, String description, Money amount) {}
