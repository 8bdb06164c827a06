package org.tallywright.past;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
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
    private static final String HERE = "is in the plan already";

    private CopyLines() {}

    /** What every line of one offer is worked out with. */
    record Today(
            Map<UUID, TaskKindCard> taskKinds,
            Map<UUID, PieceKindCard> pieceKinds,
            Map<UUID, EstimateMaterials.Facts> materials,
            Map<UUID, TakeoffCopy.Found> parts,
            PlannedLines.Planned planned) {

        UUID countedAs(UUID kind) {
            TaskKindCard card = taskKinds.get(kind);
            return card == null ? kind : card.id();
        }
    }

    /**
     * Where the lines of a group go.
     *
     * @param piece the past piece, null for the whole job
     * @param now name and sizes of the piece to be; null as above
     * @param there the piece that takes them; null for a new one, and for the whole job
     */
    record To(
            @Nullable PastPiece piece,
            @Nullable PieceDetails now,
            @Nullable UUID there) {
        static final To JOB = new To(null, null, null);

        boolean isNew() {
            return piece != null && there == null;
        }

        boolean hasTask(UUID kind, Today today) {
            return !isNew() && today.planned.hasTask(there, kind);
        }

        boolean hasMaterial(UUID material, Today today) {
            return !isNew() && today.planned.hasMaterial(there, material);
        }
    }

    static Optional<CopyOffer.Group> group(PastJob from, To to, Today today, boolean whole) {
        PastPiece piece = to.piece;
        UUID id = piece == null ? null : piece.id();
        Scaling scaling = scaling(piece, to.now, today);
        List<CopyOffer.TaskLine> tasks = from.tasksOf(id).stream()
                .map(task -> task(task, scaling, to, today))
                .toList();
        List<CopyOffer.MaterialLine> lines = from.materials().stream()
                .filter(m -> whole ? Objects.equals(m.pieceId(), id) : true)
                .map(m -> material(m, scaling, to, today))
                .toList();
        boolean empty = piece == null && tasks.isEmpty() && lines.isEmpty();
        return empty
                ? Optional.empty()
                : Optional.of(
                        new CopyOffer.Group(piece, to.now, tasks, lines, id == null ? null : today.parts.get(id)));
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

    private static CopyOffer.TaskLine task(PastTask past, @Nullable Scaling scaling, To to, Today today) {
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
        boolean here = to.hasTask(card.id(), today);
        if (here) {
            notes.add(HERE);
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

    private static CopyOffer.MaterialLine material(PastMaterial past, @Nullable Scaling scaling, To to, Today today) {
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
        boolean here = to.hasMaterial(past.materialId(), today);
        if (here) {
            notes.add(HERE);
        }
        if (past.shared()) {
            notes.add("for all pieces there: write how much this one needs");
        }
        Quantity net = factor.of(past.there(), past.unit());
        boolean ticked = !past.shared() && !here && !net.isZero() && facts != null && price != null;
        return new CopyOffer.MaterialLine(past, net, price, now != null, ticked, notes);
    }
}
