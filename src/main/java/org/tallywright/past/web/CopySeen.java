package org.tallywright.past.web;

import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.past.CopyOffer;
import org.tallywright.past.PastPiece;
import org.tallywright.shared.Length;

/**
 * What a preview offered beside its boxes, which comes back with the form in {@code seen-ID}: so a box that nobody changed
 * follows new sizes, one that somebody typed in stays, and nothing is copied at figures that nobody saw.
 *
 * @param quantity as the box was offered
 * @param figures what else was shown: hours, and prices to those who see money
 */
record CopySeen(String quantity, boolean ticked, String figures) {
    private static final String SIZES =
            "Sizes, or the piece that takes the lines, have changed: look over the quantities, then copy.";
    private static final String FIGURES =
            "Figures have changed since this page was made: look them over as they are now, then copy.";

    static CopySeen of(CopyOffer.TaskLine line) {
        return new CopySeen(
                line.quantity().toString(),
                line.ticked(),
                line.choices().stream()
                        .map(choice -> choice.basis().code() + " " + choice.rate())
                        .collect(Collectors.joining(" ")));
    }

    static CopySeen of(CopyOffer.MaterialLine line, boolean money) {
        String price = !money || line.price() == null ? "" : line.price() + (line.priceOfToday() ? " today" : " then");
        return new CopySeen(line.net().toString(), line.ticked(), price);
    }

    static CopySeen of(CopyOffer.CostLine line) {
        return new CopySeen("", !line.here(), line.past().amount().toString());
    }

    /** As sent along; empty where it does not read like one. */
    static Optional<CopySeen> read(String sent) {
        String[] parts = sent.split("\\|", -1);
        return parts.length == 3
                ? Optional.of(new CopySeen(parts[0], parts[1].equals("ticked"), parts[2]))
                : Optional.empty();
    }

    String sent() {
        return quantity + "|" + (ticked ? "ticked" : "") + "|" + figures;
    }

    /** What the quantities of a piece were worked out for: sizes, number, and the piece that takes the lines. */
    static String of(PieceDetails now, String into) {
        return String.join("|", units(now.width()), units(now.height()), units(now.depth()), "" + now.count(), into);
    }

    private static String units(@Nullable Length length) {
        return length == null ? "" : String.valueOf(length.units());
    }

    /** Why the page has to be looked at once more before anything ticked is copied; empty where it was shown like that. */
    static Optional<String> changed(CopyForm form, CopyOffer offer, boolean money) {
        boolean figures =
                offer.costs().stream().anyMatch(line -> form.differs(line.past().id(), of(line)));
        for (CopyOffer.Group group : offer.groups()) {
            PastPiece piece = group.piece();
            if (piece != null && !form.takes(piece)) {
                continue;
            }
            PieceDetails now = group.now();
            if (piece != null
                    && now != null
                    && !form.seen(piece.id())
                            .equals(of(now, form.into(piece.id()).strip()))) {
                return Optional.of(SIZES);
            }
            figures |= group.tasks().stream()
                            .anyMatch(line -> form.differs(line.past().id(), of(line)))
                    || group.materials().stream()
                            .anyMatch(line -> form.differs(line.past().id(), of(line, money)));
        }
        return figures ? Optional.of(FIGURES) : Optional.empty();
    }
}
