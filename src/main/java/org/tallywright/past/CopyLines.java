package org.tallywright.past;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.tallywright.catalog.PieceKindCard;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.estimates.EstimateMaterials;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.UnitHours;
import org.tallywright.shared.UnitPrice;
import org.tallywright.takeoff.TakeoffCopy;

/** The lines of an offer: what was done there, scaled, with the catalogue of today. */
final class CopyLines {
    private CopyLines() {}

    /** What every line of one offer is worked out with. */
    record Today(
            Map<UUID, TaskKindCard> taskKinds,
            Map<UUID, PieceKindCard> pieceKinds,
            Map<UUID, EstimateMaterials.Facts> materials,
            Map<UUID, TakeoffCopy.Found> parts,
            Set<UUID> planned) {

        UUID countedAs(UUID kind) {
            TaskKindCard card = taskKinds.get(kind);
            return card == null ? kind : card.id();
        }
    }

    static Optional<CopyOffer.Group> group(
            PastJob from, @Nullable PastPiece piece, @Nullable PieceDetails now, Today today, boolean whole) {
        UUID id = piece == null ? null : piece.id();
        Scaling scaling = scaling(piece, now, today);
        List<CopyOffer.TaskLine> tasks = from.tasksOf(id).stream()
                .map(task -> task(task, scaling, today))
                .toList();
        List<CopyOffer.MaterialLine> lines = from.materials().stream()
                .filter(m -> whole ? Objects.equals(m.pieceId(), id) : true)
                .map(m -> material(m, scaling, today))
                .toList();
        boolean empty = piece == null && tasks.isEmpty() && lines.isEmpty();
        return empty
                ? Optional.empty()
                : Optional.of(new CopyOffer.Group(piece, now, tasks, lines, id == null ? null : today.parts.get(id)));
    }

    private static @Nullable Scaling scaling(@Nullable PastPiece piece, @Nullable PieceDetails now, Today today) {
        if (piece == null || now == null) {
            return null;
        }
        UnaryOperator<UUID> countedAs = today::countedAs;
        return new Scaling(
                today.pieceKinds.get(piece.details().pieceKindId()),
                PastPiece.shape(piece.details()),
                PastPiece.shape(now),
                countedAs);
    }

    private static CopyOffer.TaskLine task(PastTask past, @Nullable Scaling scaling, Today today) {
        TaskKindCard card = today.taskKinds.get(past.kindId());
        if (card == null) {
            throw new IllegalStateException("a task without its kind");
        }
        Scaling.Factor factor = scaling == null ? Scaling.Factor.SAME : scaling.task(past.kindId());
        List<String> notes = new ArrayList<>();
        notes.add(past.story());
        if (!factor.how().isEmpty()) {
            notes.add(factor.how());
        }
        boolean here = scaling == null && today.planned.contains(card.id());
        if (here) {
            notes.add("is in the plan already");
        }
        if (!card.active()) {
            notes.add("its kind of work is out of use");
        }
        boolean sameMeasure = past.unit() == card.unit() || past.unit().counterpart() == card.unit();
        if (!sameMeasure) {
            notes.add("counted in " + card.unit().code() + " today: write the quantity anew");
        }
        Quantity quantity =
                sameMeasure ? factor.of(past.there(), past.unit()).convert(past.unit(), card.unit()) : Quantity.ZERO;
        boolean ticked = !quantity.isZero() && card.active() && !here;
        return new CopyOffer.TaskLine(
                past, card.id(), card.unit(), quantity, choices(past, card, sameMeasure), ticked, notes);
    }

    private static List<HoursChoice> choices(PastTask past, TaskKindCard card, boolean sameMeasure) {
        List<HoursChoice> choices = new ArrayList<>();
        choices.add(new HoursChoice(HoursChoice.Basis.BOOK, card.unitHours()));
        if (sameMeasure) {
            past.took()
                    .ifPresent(rate -> choices.add(
                            new HoursChoice(HoursChoice.Basis.TOOK, rate.convert(past.unit(), card.unit()))));
            UnitHours then = past.unitHours().convert(past.unit(), card.unit());
            choices.add(new HoursChoice(HoursChoice.Basis.THEN, then));
        }
        return choices;
    }

    private static CopyOffer.MaterialLine material(PastMaterial past, @Nullable Scaling scaling, Today today) {
        Scaling.Factor factor = scaling == null ? Scaling.Factor.SAME : scaling.material(past.unit());
        List<String> notes = new ArrayList<>();
        notes.add(past.words());
        if (!factor.how().isEmpty()) {
            notes.add(factor.how());
        }
        EstimateMaterials.Facts facts = today.materials.get(past.materialId());
        if (facts == null) {
            notes.add("is out of use in the catalogue");
        }
        UnitPrice now = facts == null ? null : facts.price();
        UnitPrice price = now == null ? past.priceThen() : now;
        if (price == null) {
            notes.add("the catalogue has no price for it yet");
        }
        if (!past.freight().isZero()) {
            // Delivery does not grow with a piece, and one run may bring the material of several jobs.
            notes.add("its freight stays behind: write what it costs today into the line");
        }
        if (past.shared()) {
            notes.add("for all pieces there: write how much this one needs");
        }
        Quantity net = factor.of(past.there(), past.unit());
        boolean ticked = !past.shared() && !net.isZero() && facts != null && price != null;
        return new CopyOffer.MaterialLine(past, net, price, now != null, ticked, notes);
    }
}
