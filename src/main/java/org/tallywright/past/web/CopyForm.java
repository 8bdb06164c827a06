package org.tallywright.past.web;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.util.MultiValueMap;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.past.CopyOffer;
import org.tallywright.past.PastPiece;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;
import org.tallywright.shared.Units;
import org.tallywright.takeoff.PieceFacts;
import org.tallywright.web.FormReader;

/**
 * A copy as ticked and changed. Boxes carry the id of the past thing that they are about: {@code take-ID}, {@code quantity-ID},
 * {@code hours-ID}, {@code parts-ID}, and for pieces {@code into-ID}, {@code name-ID} and the sizes; {@code seen-ID} is what they were
 * offered with ({@link CopySeen}). What is offered now stands in {@link CopyOffer}; nothing but ticks, texts and a choice is taken from the form.
 *
 * @param sent null before the form was sent
 * @param offered what stands in boxes before the form was sent, where the page it comes from says so
 */
record CopyForm(UUID id, @Nullable MultiValueMap<String, String> sent, Map<String, String> offered) {
    private static final String BROKEN = "The form did not arrive whole. Reload the page and try again.";

    static CopyForm blank() {
        return new CopyForm(Ids.next(), null, Map.of());
    }

    /** @param offered by the name of the box, of that past piece: the piece that takes its lines, the sizes looked for */
    static CopyForm blank(UUID source, Map<String, String> offered) {
        Map<String, String> boxes = new HashMap<>();
        offered.forEach((box, value) -> {
            if (!value.isBlank()) {
                boxes.put(box + "-" + source, value);
            }
        });
        return new CopyForm(Ids.next(), null, boxes);
    }

    static CopyForm of(MultiValueMap<String, String> sent) {
        try {
            String id = sent.getFirst("copy");
            return new CopyForm(UUID.fromString(id == null ? "" : id.strip()), sent, Map.of());
        } catch (IllegalArgumentException e) {
            throw new Refused(BROKEN);
        }
    }

    /** Whether quantities are to be worked out anew for the sizes, and nothing copied. */
    boolean asksAnew() {
        return sent != null && sent.containsKey("anew");
    }

    boolean ticked(String box, boolean offered) {
        return sent == null ? offered : sent.containsKey(box);
    }

    /** What stood beside the boxes of a thing when its page was made, as {@link CopySeen} writes it. */
    String seen(UUID source) {
        return text("seen-" + source, "");
    }

    /** Whether a ticked line is offered otherwise now than it was seen. */
    boolean differs(UUID source, CopySeen now) {
        return ticked("take-" + source, now.ticked()) && !seen(source).equals(now.sent());
    }

    /** What stands in a quantity's box: as it was typed; a box that nobody changed follows what is offered now. */
    String quantity(UUID source, CopySeen now) {
        String typed = text("quantity-" + source, now.quantity());
        boolean left = CopySeen.read(seen(source))
                .filter(seen -> seen.quantity().equals(typed.strip()))
                .isPresent();
        return left ? now.quantity() : typed;
    }

    /** A tick likewise: as somebody set it, else as it is offered now. */
    boolean takes(UUID source, CopySeen now) {
        boolean ticked = ticked("take-" + source, now.ticked());
        boolean left = CopySeen.read(seen(source))
                .filter(seen -> seen.ticked() == ticked)
                .isPresent();
        return left ? now.ticked() : ticked;
    }

    String text(String box, String offered) {
        String typed = sent == null ? this.offered.get(box) : sent.getFirst(box);
        return typed == null ? offered : typed;
    }

    /** The piece of the job that takes the lines of a past one, by its id as sent; empty for a new one. */
    String into(UUID source) {
        return text("into-" + source, "");
    }

    @Nullable
    UUID target(UUID source) {
        try {
            return into(source).isBlank() ? null : UUID.fromString(into(source).strip());
        } catch (IllegalArgumentException e) {
            return null;
        }
    }

    /** Pieces of the job that take lines, by the past piece. */
    Map<UUID, UUID> targets(List<PastPiece> pieces) {
        Map<UUID, UUID> targets = new HashMap<>();
        for (PastPiece piece : pieces) {
            UUID target = target(piece.id());
            if (target != null) {
                targets.put(piece.id(), target);
            }
        }
        return targets;
    }

    /** Whether a past piece comes along; what stands in the boxes of one that does not is nobody's business. */
    boolean takes(PastPiece piece) {
        return ticked("take-" + piece.id(), true);
    }

    /** Name and sizes of the pieces to be, or of those that are there; one that cannot be read keeps those of then. */
    Map<UUID, PieceDetails> sizes(
            FormReader refusals, List<PastPiece> pieces, List<PieceFacts.Fact> targets, PastWords words) {
        Map<UUID, PieceDetails> sizes = new HashMap<>();
        for (PastPiece piece : pieces) {
            FormReader read = takes(piece) ? refusals : new FormReader();
            String into = into(piece.id());
            PieceFacts.Fact there = targets.stream()
                    .filter(target -> target.id().toString().equals(into.strip()))
                    .findFirst()
                    .orElse(null);
            if (there == null && !into.isBlank()) {
                read.refuse("into-" + piece.id(), "Pick a piece of this job.");
            }
            sizes.put(piece.id(), there == null ? typed(read, piece, words) : details(there));
        }
        return sizes;
    }

    private static PieceDetails details(PieceFacts.Fact piece) {
        return new PieceDetails(
                piece.kindId(), piece.name(), piece.width(), piece.height(), piece.depth(), piece.count(), "");
    }

    private PieceDetails typed(FormReader read, PastPiece piece, PastWords words) {
        PieceDetails then = piece.details();
        String box = "-" + piece.id();
        Units units = words.units();
        String name = read.field("name" + box, () -> Typed.requiredLine(text("name" + box, then.name()), 120));
        Integer count = read.field("count" + box, () -> count(text("count" + box, String.valueOf(then.count()))));
        return new PieceDetails(
                then.pieceKindId(),
                name == null ? then.name() : name,
                size(read, "width" + box, then.width(), words, units),
                size(read, "height" + box, then.height(), words, units),
                size(read, "depth" + box, then.depth(), words, units),
                count == null ? then.count() : count,
                then.note());
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
}
