package org.tallywright.past;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.catalog.PieceKindCard;
import org.tallywright.catalog.PieceKindLine;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.estimates.EstimateMaterials;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.UnitHours;
import org.tallywright.shared.UnitPrice;
import org.tallywright.takeoff.TakeoffCopy;

/** Works out what a copy would hold: quantities for the new sizes, the choice of hours, prices of today. */
@Service
public class CopyOffers {
    private final TaskKinds taskKinds;
    private final PieceKinds pieceKinds;
    private final EstimateMaterials materials;
    private final TakeoffCopy takeoff;
    private final ShopClock clock;
    private final JdbcClient jdbc;

    CopyOffers(
            TaskKinds taskKinds,
            PieceKinds pieceKinds,
            EstimateMaterials materials,
            TakeoffCopy takeoff,
            ShopClock clock,
            JdbcClient jdbc) {
        this.taskKinds = taskKinds;
        this.pieceKinds = pieceKinds;
        this.materials = materials;
        this.takeoff = takeoff;
        this.clock = clock;
        this.jdbc = jdbc;
    }

    /** What every line of one offer is worked out with. */
    private record Today(
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

    /**
     * @param from a whole job, or one with a single piece of it
     * @param sizes of the pieces to be, by the past piece; one that is missing has the sizes of then
     */
    @Transactional(readOnly = true)
    public CopyOffer offer(JobRef into, PastJob from, boolean whole, Map<UUID, PieceDetails> sizes) {
        Today today = today(into, from);
        List<CopyOffer.Group> groups = new ArrayList<>();
        if (whole) {
            group(from, null, null, today, whole).ifPresent(groups::add);
        }
        for (PastPiece piece : from.pieces()) {
            group(from, piece, sizes.getOrDefault(piece.id(), piece.details()), today, whole)
                    .ifPresent(groups::add);
        }
        return new CopyOffer(into, from, groups, from.costs(), whole ? 0 : besides(from.ref()));
    }

    private Today today(JobRef into, PastJob from) {
        Map<UUID, PieceKindCard> kinds =
                pieceKinds.all().stream().collect(Collectors.toMap(PieceKindCard::id, Function.identity()));
        Set<UUID> named = new HashSet<>();
        from.tasks().forEach(task -> named.add(task.kindId()));
        for (PastPiece piece : from.pieces()) {
            PieceKindCard kind = kinds.get(piece.details().pieceKindId());
            if (kind != null) {
                kind.lines().stream().map(PieceKindLine::taskKindId).forEach(named::add);
            }
        }
        return new Today(
                taskKinds.countedAs(named),
                kinds,
                materials.offered(clock.today()).stream()
                        .collect(Collectors.toMap(EstimateMaterials.Facts::id, Function.identity())),
                takeoff.of(from.ref().id()),
                planned(into));
    }

    /** Kinds of work that the whole job to be has already, such as its travel. */
    private Set<UUID> planned(JobRef into) {
        return new HashSet<>(jdbc.sql("""
                        select distinct coalesce(k.merged_into, k.id) from task t join task_kind k on k.id = t.task_kind_id
                        where t.job_id = ? and t.piece_id is null and t.state <> 'dropped'""").param(into.id()).query(UUID.class).list());
    }

    /** Minutes of the past job on none of its pieces, without rework and the like. */
    private int besides(JobRef from) {
        return jdbc.sql("""
                        select coalesce(sum(e.minutes), 0) from time_entry e left join task t on t.id = e.task_id
                        where e.job_id = ? and t.piece_id is null and e.hour_class not in (%s)""".formatted(PastJobs.BESIDE))
                .param(from.id())
                .query(Integer.class)
                .single();
    }

    private static Optional<CopyOffer.Group> group(
            PastJob from, @Nullable PastPiece piece, @Nullable PieceDetails now, Today today, boolean whole) {
        UUID id = piece == null ? null : piece.id();
        Scaling scaling = scaling(piece, now, today);
        List<CopyOffer.TaskLine> tasks = from.tasksOf(id).stream()
                .map(task -> task(task, scaling, today))
                .toList();
        List<CopyOffer.MaterialLine> lines = from.materials().stream()
                .filter(m -> whole ? java.util.Objects.equals(m.pieceId(), id) : true)
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
        Scaling.Factor factor = scaling == null ? Scaling.Factor.SAME : scaling.material();
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
        if (past.shared()) {
            notes.add("for all pieces there: write how much this one needs");
        }
        Quantity net = factor.of(past.there());
        boolean ticked = !past.shared() && !net.isZero() && facts != null && price != null;
        return new CopyOffer.MaterialLine(past, net, price, now != null, ticked, notes);
    }
}
