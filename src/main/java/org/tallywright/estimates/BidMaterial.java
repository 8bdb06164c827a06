package org.tallywright.estimates;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;

/**
 * A material as it was bid.
 *
 * @param amount purchase quantity x unit price + freight
 * @param sourceId the estimate's line it was copied from, which may be gone
 */
@Embeddable
public record BidMaterial(
        @Nullable UUID materialId,
        String name,
        String unit,
        NetQuantity netQuantity,
        @Column(name = "yield") Yield yield,
        Quantity purchaseQuantity,
        UnitPrice unitPrice,
        @Column(name = "freight_amount") Money freight,
        Money amount,
        @Column(name = "estimate_material_id") @Nullable UUID sourceId) {}
