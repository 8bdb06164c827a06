package org.tallywright.catalog;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Yield;

/** What the shop buys. Its dated prices are rows of their own, so that setting one does not meet an edit of the rest. */
@Entity
class Material {
    @Id
    private UUID id;

    private String code;
    private String name;
    private String materialGroup;
    private String unit;
    private Yield startingYield;
    private BigDecimal purchaseStep;
    private boolean stocked;
    private String supplier;
    private String yieldBasis;
    private boolean active = true;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected Material() {}

    @SuppressWarnings("NullAway.Init")
    Material(String code, SaveMaterial first) {
        this.id = first.id();
        this.code = code;
        rewrite(first);
    }

    @Nullable
    Integer version() {
        return version;
    }

    SaveMaterial content() {
        return new SaveMaterial(
                id, null, name, materialGroup, unit, startingYield, purchaseStep, stocked, supplier, yieldBasis);
    }

    final void rewrite(SaveMaterial save) {
        name = save.name();
        materialGroup = save.group();
        unit = save.unit();
        startingYield = save.startingYield();
        purchaseStep = save.purchaseStep();
        stocked = save.stocked();
        supplier = save.supplier();
        yieldBasis = save.yieldBasis();
    }

    void use(boolean inUse) {
        active = inUse;
    }
}
