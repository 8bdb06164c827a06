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
    private @Nullable Quantity safeQuantity;
    private Quantity coveredQuantity;
    private Quantity stockQuantity;
    private UnitPrice unitPrice;
    private boolean priceTyped;

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

    /**
     * What a line says.
     *
     * @param priceTyped somebody wrote the price; else it is the catalogue's
     * @param stock of the purchase, taken from stock
     */
    record Content(@Nullable UUID pieceId, UUID materialId, MaterialCost cost, boolean priceTyped, Quantity stock) {}

    void say(Content content) {
        MaterialCost cost = content.cost();
        LaidOut laidOut = cost.laidOut();
        pieceId = content.pieceId();
        materialId = content.materialId();
        netQuantity = cost.net();
        this.yield = cost.yield();
        purchaseQuantity = cost.purchase();
        safeQuantity = laidOut == null ? null : laidOut.safe();
        coveredQuantity = laidOut == null ? Quantity.ZERO : laidOut.covered();
        stockQuantity = content.stock().compareTo(purchaseQuantity) > 0 ? purchaseQuantity : content.stock();
        unitPrice = cost.price();
        priceTyped = content.priceTyped();
        freight = cost.freight();
        amount = cost.amount();
    }

    /** The same words and figures as typed; what follows from them may have moved with the catalogue. */
    boolean says(Content content) {
        MaterialCost cost = content.cost();
        return Objects.equals(pieceId, content.pieceId())
                && materialId.equals(content.materialId())
                && netQuantity.equals(cost.net())
                && this.yield.equals(cost.yield())
                && Objects.equals(laidOut(), cost.laidOut())
                && stockQuantity.equals(content.stock())
                && unitPrice.equals(cost.price())
                && priceTyped == content.priceTyped()
                && freight.equals(cost.freight());
    }

    /** A layout stays while material, net and yield do. */
    @Nullable
    LaidOut laidOutFor(MaterialDraft draft, Yield share) {
        return needs(draft, share) ? laidOut() : null;
    }

    Quantity stockFor(MaterialDraft draft, Yield share) {
        return needs(draft, share) ? stockQuantity : Quantity.ZERO;
    }

    private boolean needs(MaterialDraft draft, Yield share) {
        return materialId.equals(draft.materialId()) && netQuantity.equals(draft.net()) && this.yield.equals(share);
    }

    private @Nullable LaidOut laidOut() {
        return safeQuantity == null ? null : new LaidOut(purchaseQuantity, safeQuantity, coveredQuantity);
    }

    /** The form shows the catalogue's price as it stands on the line; sent back like that, nobody typed it. */
    boolean typed(MaterialDraft draft) {
        return draft.price() != null
                && (priceTyped || !materialId.equals(draft.materialId()) || !unitPrice.equals(draft.price()));
    }

    @Nullable
    UnitPrice typedPrice() {
        return priceTyped ? unitPrice : null;
    }

    Money freight() {
        return freight;
    }

    @Nullable
    UUID pieceId() {
        return pieceId;
    }

    UUID id() {
        return id;
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

    /** At the catalogue's price of another day, unless somebody wrote the price. */
    void reprice(UnitPrice price, Quantity purchaseStep) {
        if (!priceTyped) {
            MaterialCost cost = new MaterialCost(netQuantity, this.yield, purchaseStep, price, freight, laidOut());
            Limits.check(cost);
            say(new Content(pieceId, materialId, cost, false, stockQuantity));
        }
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
