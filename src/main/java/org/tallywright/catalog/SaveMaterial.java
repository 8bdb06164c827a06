package org.tallywright.catalog;

import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Yield;

/** Adds a material or rewrites one; the parts are those of {@link MaterialCard}. Prices are set by day, apart. */
public record SaveMaterial(
        UUID id,
        @Nullable Integer version,
        String name,
        String group,
        String unit,
        Yield startingYield,
        BigDecimal purchaseStep,
        boolean stocked,
        String supplier,
        String yieldBasis) {

    /** Steps of 1 and 1.0 are the same. */
    public SaveMaterial {
        purchaseStep = purchaseStep.stripTrailingZeros();
    }

    SaveMaterial unversioned() {
        return new SaveMaterial(
                id, null, name, group, unit, startingYield, purchaseStep, stocked, supplier, yieldBasis);
    }
}
