package org.tallywright.estimates;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Stale;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;

/** One material of a job's working sum. */
@Entity
@Table(name = "estimate_material")
class MaterialLine {
    @Id
    private UUID id;

    private UUID jobId;
    private @Nullable UUID pieceId;
    private UUID materialId;
    private NetQuantity netQuantity;

    @Column(name = "yield")
    private Yield yield;

    private Quantity purchaseQuantity;
    private UnitPrice unitPrice;

    @Column(name = "freight_amount")
    private Money freight;

    private Money amount;
    private int position;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected MaterialLine() {}

    @SuppressWarnings("NullAway.Init")
    MaterialLine(UUID id, UUID jobId, int position) {
        this.id = id;
        this.jobId = jobId;
        this.position = position;
    }

    void say(@Nullable UUID pieceId, UUID materialId, MaterialCost cost) {
        this.pieceId = pieceId;
        this.materialId = materialId;
        netQuantity = cost.net();
        this.yield = cost.yield();
        purchaseQuantity = cost.purchase();
        unitPrice = cost.price();
        freight = cost.freight();
        amount = cost.amount();
    }

    /** The same words and figures as typed; what follows from them may have moved with the catalogue. */
    boolean says(@Nullable UUID pieceId, UUID materialId, MaterialCost cost) {
        return Objects.equals(this.pieceId, pieceId)
                && this.materialId.equals(materialId)
                && netQuantity.equals(cost.net())
                && this.yield.equals(cost.yield())
                && unitPrice.equals(cost.price())
                && freight.equals(cost.freight());
    }

    /** This line beside another version of it, for somebody who was slower; names instead of ids. */
    List<Stale.Row> beside(String itsName, String otherName, MaterialCost other) {
        return List.of(
                new Stale.Row("Material", itsName, otherName),
                new Stale.Row(
                        "Net quantity", netQuantity.toString(), other.net().toString()),
                new Stale.Row("Yield", this.yield.toString(), other.yield().toString()),
                new Stale.Row(
                        "Price of one unit", unitPrice.toString(), other.price().toString()),
                new Stale.Row("Freight", freight.toString(), other.freight().toString()));
    }

    UUID materialId() {
        return materialId;
    }

    boolean isAt(@Nullable Integer seen) {
        return version != null && version.equals(seen);
    }

    boolean isOf(UUID job) {
        return jobId.equals(job);
    }
}
