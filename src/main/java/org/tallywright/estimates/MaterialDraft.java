package org.tallywright.estimates;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;

/**
 * A material line as typed.
 *
 * @param version the one that was read, or null for a line that the page takes for new
 * @param yield null for the catalogue's starting yield
 * @param price null for the catalogue's price of today
 */
public record MaterialDraft(
        UUID id,
        @Nullable Integer version,
        @Nullable UUID pieceId,
        UUID materialId,
        NetQuantity net,
        @Nullable Yield yield,
        @Nullable UnitPrice price,
        Money freight) {}
