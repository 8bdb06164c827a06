package org.tallywright.catalog.web;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.catalog.SaveMaterial;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Typed;
import org.tallywright.shared.Yield;
import org.tallywright.web.FormReader;

/** A material as typed; the price only with a new one, later prices are dated on its page. */
record MaterialForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Nullable String name,
        @Nullable String group,
        @Nullable String unit,
        @Nullable String price,
        @Nullable String startingYield,
        @Nullable String yieldBasis,
        @Nullable String purchaseStep,
        @Nullable String stocked,
        @Nullable String supplier) {

    static MaterialForm blank(UUID id) {
        return new MaterialForm(id, null, "", "", "each", "", "100 %", "", "1", "", "");
    }

    static MaterialForm of(MaterialCard material) {
        return new MaterialForm(
                material.id(),
                material.version(),
                material.name(),
                material.group(),
                material.unit(),
                "",
                material.startingYield().percent() + " %",
                material.yieldBasis(),
                material.purchaseStep().toPlainString(),
                String.valueOf(material.stocked()),
                material.supplier());
    }

    /** The save this asks for, or null with every refusal in {@code read}. */
    @Nullable
    SaveMaterial read(UUID savedId, FormReader read) {
        String readName = read.field("name", () -> Typed.requiredLine(Picked.text(name), 120));
        String readGroup = read.field("group", () -> orElse(Typed.line(Picked.text(group), 40), "other"));
        String readUnit = read.field("unit", () -> Typed.requiredLine(Picked.text(unit), 20));
        Yield readYield = read.field("startingYield", () -> Yield.of(Picked.text(startingYield)));
        String readBasis = read.field(
                "yieldBasis", () -> orElse(Typed.line(Picked.text(yieldBasis), 300), TaskKindCard.NO_SOURCE));
        BigDecimal readStep = read.field(
                "purchaseStep", () -> Quantity.of(Picked.text(purchaseStep)).amount());
        String readSupplier = read.field("supplier", () -> Typed.line(Picked.text(supplier), 120));
        if (read.refused()) {
            return null;
        }
        return new SaveMaterial(
                savedId,
                version,
                requireNonNull(readName),
                requireNonNull(readGroup),
                requireNonNull(readUnit),
                requireNonNull(readYield),
                requireNonNull(readStep),
                "true".equals(stocked),
                requireNonNull(readSupplier),
                requireNonNull(readBasis));
    }

    private static String orElse(String text, String otherwise) {
        return text.isEmpty() ? otherwise : text;
    }
}
