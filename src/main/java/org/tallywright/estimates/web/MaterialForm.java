package org.tallywright.estimates.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.estimates.EstimateSheet;
import org.tallywright.estimates.MaterialDraft;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Money;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;
import org.tallywright.web.FormReader;

/** A material line as typed. An empty yield or price is the catalogue's, empty freight is none. */
record MaterialForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Nullable String material,
        @Nullable String piece,
        @Nullable String net,
        @Nullable String yield,
        @Nullable String price,
        @Nullable String freight,
        @Nullable String then) {

    static MaterialForm blank() {
        return new MaterialForm(Ids.next(), null, "", "", "", "", "", "", "");
    }

    static MaterialForm of(EstimateSheet.MaterialRow row) {
        UUID piece = row.pieceId();
        return new MaterialForm(
                row.id(),
                row.version(),
                row.materialId().toString(),
                piece == null ? "" : piece.toString(),
                row.net().toString(),
                row.yield().toString(),
                row.price().amount().stripTrailingZeros().scale() <= 2
                        ? row.price().amount().setScale(2).toPlainString()
                        : row.price().toString(),
                row.freight().isZero() ? "" : row.freight().amount().toPlainString(),
                "");
    }

    @Nullable
    MaterialDraft read(FormReader read) {
        UUID own = read.field("", () -> Picked.own(id));
        UUID what = read.field("material", () -> Picked.id(material));
        UUID where = read.optional("piece", piece, () -> Picked.id(piece));
        NetQuantity much = read.field("net", () -> NetQuantity.of(Picked.text(net)));
        Yield share = read.optional("yield", yield, () -> Yield.of(Picked.text(yield)));
        UnitPrice each = read.optional("price", price, () -> UnitPrice.of(Picked.text(price)));
        Money carriage = read.optional("freight", freight, () -> Money.of(Picked.text(freight)));
        if (read.refused() || own == null || what == null || much == null) {
            return null;
        }
        return new MaterialDraft(
                own, version, where, what, much, share, each, carriage == null ? Money.ZERO : carriage);
    }

    boolean another() {
        return "another".equals(then);
    }
}
