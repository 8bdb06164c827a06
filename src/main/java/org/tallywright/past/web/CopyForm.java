package org.tallywright.past.web;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.util.MultiValueMap;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.past.CopyOffer;
import org.tallywright.past.CopyPlan;
import org.tallywright.past.HoursChoice;
import org.tallywright.past.PastPiece;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;
import org.tallywright.shared.Units;
import org.tallywright.web.FormReader;

/**
 * A copy as ticked and changed. Boxes carry the id of the past thing that they are about: {@code take-ID}, {@code quantity-ID},
 * {@code hours-ID}, {@code parts-ID}, and for pieces {@code name-ID} and the sizes. What a box is offered with stands in
 * {@link CopyOffer}; nothing but ticks, texts and a choice is taken from the form.
 *
 * @param sent null before the form was sent
 */
record CopyForm(UUID id, @Nullable MultiValueMap<String, String> sent) {
    private static final String BROKEN = "The form did not arrive whole. Reload the page and try again.";

    static CopyForm blank() {
        return new CopyForm(Ids.next(), null);
    }

    static CopyForm of(MultiValueMap<String, String> sent) {
        try {
            String id = sent.getFirst("copy");
            return new CopyForm(UUID.fromString(id == null ? "" : id.strip()), sent);
        } catch (IllegalArgumentException e) {
            throw new Refused(BROKEN);
        }
    }

    /** Whether quantities are to be worked out anew for the sizes, and nothing kept. */
    boolean asksAnew() {
        return sent != null && sent.containsKey("anew");
    }

    boolean ticked(String box, boolean offered) {
        return sent == null ? offered : sent.containsKey(box);
    }

    String text(String box, String offered) {
        String typed = sent == null ? null : sent.getFirst(box);
        return typed == null ? offered : typed;
    }

    /** Name and sizes of the pieces to be; one that cannot be read keeps those of then. */
    Map<UUID, PieceDetails> sizes(FormReader read, List<PastPiece> pieces, PastWords words) {
        Map<UUID, PieceDetails> sizes = new HashMap<>();
        for (PastPiece piece : pieces) {
            PieceDetails then = piece.details();
            String box = "-" + piece.id();
            Units units = words.units();
            String name = read.field("name" + box, () -> Typed.requiredLine(text("name" + box, then.name()), 120));
            Integer count = read.field("count" + box, () -> count(text("count" + box, String.valueOf(then.count()))));
            sizes.put(
                    piece.id(),
                    new PieceDetails(
                            then.pieceKindId(),
                            name == null ? then.name() : name,
                            size(read, "width" + box, then.width(), words, units),
                            size(read, "height" + box, then.height(), words, units),
                            size(read, "depth" + box, then.depth(), words, units),
                            count == null ? then.count() : count,
                            then.note()));
        }
        return sizes;
    }

    /** A size that was left as it was shown stays exact, whatever its fractions. */
    private @Nullable Length size(FormReader read, String box, @Nullable Length then, PastWords words, Units units) {
        String shown = words.length(then);
        String typed = text(box, shown);
        return typed.equals(shown) ? then : read.optional(box, typed, () -> Length.parseSize(typed, units));
    }

    private static int count(String typed) {
        String tidy = typed.strip();
        if (!tidy.matches("[1-9]\\d{0,2}")) {
            throw new NotUnderstood("Give a whole number from 1 to 999.");
        }
        return Integer.parseInt(tidy);
    }

    /** @param fromPiece null for a whole job; a piece that is not ticked takes its lines with it */
    CopyPlan read(FormReader read, CopyOffer offer, @Nullable UUID fromPiece) {
        List<CopyPlan.PieceLine> pieces = new ArrayList<>();
        List<CopyPlan.TaskLine> tasks = new ArrayList<>();
        List<CopyPlan.MaterialLine> materials = new ArrayList<>();
        for (CopyOffer.Group group : offer.groups()) {
            PastPiece piece = group.piece();
            if (piece != null && !ticked("take-" + piece.id(), true)) {
                continue;
            }
            if (piece != null && group.now() != null) {
                boolean parts = group.parts() != null && ticked("parts-" + piece.id(), true);
                pieces.add(new CopyPlan.PieceLine(
                        piece.id(), group.now(), parts, group.sameSizes(), "As in " + offer.what(piece)));
            }
            group.tasks().forEach(line -> task(read, line, piece, offer, tasks));
            group.materials().forEach(line -> material(read, line, piece, offer, materials));
        }
        PastPiece only = fromPiece == null ? null : offer.from().pieces().get(0);
        return new CopyPlan(
                id,
                offer.from(),
                fromPiece,
                offer.what(only),
                pieces,
                tasks,
                materials,
                offer.costs().stream()
                        .filter(cost -> ticked("take-" + cost.id(), true))
                        .toList());
    }

    private void task(
            FormReader read,
            CopyOffer.TaskLine line,
            @Nullable PastPiece piece,
            CopyOffer offer,
            List<CopyPlan.TaskLine> tasks) {
        UUID source = line.past().id();
        if (!ticked("take-" + source, line.ticked())) {
            return;
        }
        Quantity quantity = quantity(read, "quantity-" + source, line.quantity());
        HoursChoice choice = read.field(
                "hours-" + source,
                () -> line.choice(text("hours-" + source, HoursChoice.Basis.BOOK.code()))
                        .orElseThrow(() -> new NotUnderstood("Choose one of the hours that are offered.")));
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

    private void material(
            FormReader read,
            CopyOffer.MaterialLine line,
            @Nullable PastPiece piece,
            CopyOffer offer,
            List<CopyPlan.MaterialLine> materials) {
        UUID source = line.past().id();
        if (!ticked("take-" + source, line.ticked())) {
            return;
        }
        Quantity net = quantity(read, "quantity-" + source, line.net());
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

    private @Nullable Quantity quantity(FormReader read, String box, Quantity offered) {
        return read.field(box, () -> {
            Quantity quantity = Quantity.of(text(box, offered.toString()));
            if (quantity.isZero()) {
                throw new NotUnderstood("Give a quantity above nothing, or untick the line.");
            }
            return quantity;
        });
    }
}
