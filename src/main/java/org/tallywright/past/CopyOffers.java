package org.tallywright.past;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.catalog.PieceKindCard;
import org.tallywright.catalog.PieceKindLine;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.estimates.EstimateMaterials;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.shared.ShopClock;
import org.tallywright.takeoff.TakeoffCopy;

/** Works out what a copy would hold: quantities for the new sizes, the choice of hours, prices of today. */
@Service
public class CopyOffers {
    private final TaskKinds taskKinds;
    private final PieceKinds pieceKinds;
    private final EstimateMaterials materials;
    private final TakeoffCopy takeoff;
    private final PlannedLines planned;
    private final ShopClock clock;
    private final JdbcClient jdbc;

    CopyOffers(
            TaskKinds taskKinds,
            PieceKinds pieceKinds,
            EstimateMaterials materials,
            TakeoffCopy takeoff,
            PlannedLines planned,
            ShopClock clock,
            JdbcClient jdbc) {
        this.taskKinds = taskKinds;
        this.pieceKinds = pieceKinds;
        this.materials = materials;
        this.takeoff = takeoff;
        this.planned = planned;
        this.clock = clock;
        this.jdbc = jdbc;
    }

    /**
     * @param from a whole job, or one with a single piece of it
     * @param sizes of the pieces to be, by the past piece; one that is missing has the sizes of then
     * @param targets pieces that are there and take the lines, by the past piece; of one that is missing a new piece is made
     */
    @Transactional(readOnly = true)
    public CopyOffer offer(
            JobRef into, PastJob from, boolean whole, Map<UUID, PieceDetails> sizes, Map<UUID, UUID> targets) {
        CopyLines.Today today = today(into, from);
        List<CopyOffer.Group> groups = new ArrayList<>();
        if (whole) {
            CopyLines.group(from, CopyLines.To.JOB, today, whole).ifPresent(groups::add);
        }
        for (PastPiece piece : from.pieces()) {
            PieceDetails now = sizes.getOrDefault(piece.id(), piece.details());
            CopyLines.group(from, new CopyLines.To(piece, now, targets.get(piece.id())), today, whole)
                    .ifPresent(groups::add);
        }
        List<CopyOffer.CostLine> costs = from.costs().stream()
                .map(cost -> new CopyOffer.CostLine(cost, today.planned().hasCost(cost.description())))
                .toList();
        return new CopyOffer(into, from, groups, costs, whole ? 0 : besides(from.ref()));
    }

    private CopyLines.Today today(JobRef into, PastJob from) {
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
        return new CopyLines.Today(
                taskKinds.countedAs(named),
                kinds,
                materials.offered(clock.today()).stream()
                        .collect(Collectors.toMap(EstimateMaterials.Facts::id, Function.identity())),
                takeoff.of(from.ref().id()),
                planned.of(into));
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
}
