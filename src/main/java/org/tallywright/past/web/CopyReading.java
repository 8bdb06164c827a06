package org.tallywright.past.web;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.past.CopyOffer;
import org.tallywright.past.CopyPlan;
import org.tallywright.past.HoursChoice;
import org.tallywright.past.PastPiece;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Quantity;
import org.tallywright.web.FormReader;

/** Reads the ticked lines of a sent copy; what is refused is kept in its reader. */
final class CopyReading {
    private final CopyForm form;
    private final FormReader read;
    private final CopyOffer offer;
    private final List<CopyPlan.PieceLine> pieces = new ArrayList<>();
    private final List<CopyPlan.TaskLine> tasks = new ArrayList<>();
    private final List<CopyPlan.MaterialLine> materials = new ArrayList<>();

    CopyReading(CopyForm form, FormReader read, CopyOffer offer) {
        this.form = form;
        this.read = read;
        this.offer = offer;
    }

    /** @param fromPiece null for a whole job; a piece that is not ticked keeps its lines behind with it */
    CopyPlan plan(@Nullable UUID fromPiece) {
        for (CopyOffer.Group group : offer.groups()) {
            PastPiece piece = group.piece();
            if (piece == null || form.takes(piece)) {
                piece(group, piece);
                group.tasks().forEach(line -> task(line, piece));
                group.materials().forEach(line -> material(line, piece));
            }
        }
        PastPiece only = fromPiece == null ? null : offer.from().pieces().get(0);
        return new CopyPlan(
                form.id(),
                offer.from(),
                fromPiece,
                offer.what(only),
                pieces,
                tasks,
                materials,
                offer.costs().stream()
                        .filter(cost -> form.ticked("take-" + cost.past().id(), !cost.here()))
                        .map(CopyOffer.CostLine::past)
                        .toList());
    }

    private void piece(CopyOffer.Group group, @Nullable PastPiece piece) {
        if (piece != null && group.now() != null) {
            boolean parts = group.parts() != null && form.ticked("parts-" + piece.id(), true);
            pieces.add(new CopyPlan.PieceLine(
                    piece.id(),
                    form.target(piece.id()),
                    group.now(),
                    parts,
                    group.sameSizes(),
                    "As in " + offer.what(piece)));
        }
    }

    private void task(CopyOffer.TaskLine line, @Nullable PastPiece piece) {
        UUID source = line.past().id();
        if (!form.ticked("take-" + source, line.ticked())) {
            return;
        }
        Quantity quantity = quantity("quantity-" + source, line.quantity());
        HoursChoice choice = read.field("hours-" + source, () -> choice(line, source));
        if (quantity != null && choice != null) {
            tasks.add(new CopyPlan.TaskLine(
                    source,
                    piece == null ? null : piece.id(),
                    line.kindId(),
                    line.past().name(),
                    quantity,
                    choice.basis() == HoursChoice.Basis.BOOK ? null : choice.rate(),
                    line.origin(offer.what(piece))));
        }
    }

    private HoursChoice choice(CopyOffer.TaskLine line, UUID source) {
        return line.choice(form.text("hours-" + source, HoursChoice.Basis.BOOK.code()))
                .orElseThrow(() -> new NotUnderstood("Choose one of the hours that are offered."));
    }

    private void material(CopyOffer.MaterialLine line, @Nullable PastPiece piece) {
        UUID source = line.past().id();
        if (!form.ticked("take-" + source, line.ticked())) {
            return;
        }
        Quantity net = quantity("quantity-" + source, line.net());
        if (net != null && line.price() == null) {
            read.refuse("quantity-" + source, "The catalogue has no price for it; give it one there, or untick it.");
        } else if (net != null) {
            materials.add(new CopyPlan.MaterialLine(
                    source,
                    piece == null ? null : piece.id(),
                    line.past().materialId(),
                    net,
                    line.priceOfToday() ? null : line.price(),
                    line.origin(offer.what(piece))));
        }
    }

    private @Nullable Quantity quantity(String box, Quantity offered) {
        return read.field(box, () -> {
            Quantity quantity = Quantity.of(form.text(box, offered.toString()));
            if (quantity.isZero()) {
                throw new NotUnderstood("Give a quantity above nothing, or untick the line.");
            }
            return quantity;
        });
    }
}
