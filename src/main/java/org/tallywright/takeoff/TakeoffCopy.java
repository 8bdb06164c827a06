package org.tallywright.takeoff;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Predicate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobDesk;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Refused;

/**
 * Takes over what was answered for a piece, and its parts, to another of the same kind. Parts by the formulas are worked out
 * anew for the new sizes; parts listed or changed by hand have sizes of their own and go along only where the sizes are the same.
 */
@Service
public class TakeoffCopy {
    private final JobDesk jobs;
    private final TakeoffDesk desk;
    private final PieceFacts pieces;
    private final RecipeBook recipes;
    private final PartRows rows;
    private final Parts parts;
    private final PieceTakeoffs takeoffs;
    private final LeftOutParts leftOut;
    private final JdbcClient jdbc;

    TakeoffCopy(
            JobDesk jobs,
            TakeoffDesk desk,
            PieceFacts pieces,
            RecipeBook recipes,
            PartRows rows,
            Parts parts,
            PieceTakeoffs takeoffs,
            LeftOutParts leftOut,
            JdbcClient jdbc) {
        this.jobs = jobs;
        this.desk = desk;
        this.pieces = pieces;
        this.recipes = recipes;
        this.rows = rows;
        this.parts = parts;
        this.takeoffs = takeoffs;
        this.leftOut = leftOut;
        this.jdbc = jdbc;
    }

    /**
     * @param takenOff its formulas were worked out
     * @param byHand lines of parts listed or changed by hand
     */
    public record Found(boolean takenOff, int byHand) {}

    /** The pieces of a job that have something to take over; one query, however many. */
    @Transactional(readOnly = true)
    public Map<UUID, Found> of(UUID job) {
        Map<UUID, Found> found = new HashMap<>();
        jdbc.sql("""
                        select p.id, t.id is not null as taken_off, coalesce(h.lines, 0) as by_hand from piece p
                        left join piece_takeoff t on t.id = p.id
                        left join (select piece_id, count(*) as lines from part where job_id = :job and by_hand group by piece_id) h
                            on h.piece_id = p.id
                        where p.job_id = :job and (t.id is not null or h.lines > 0)""").param("job", job).query(row -> {
            found.put(row.getObject("id", UUID.class), new Found(row.getBoolean("taken_off"), row.getInt("by_hand")));
        });
        return found;
    }

    /**
     * To a piece that has no parts yet. Formulas that cannot be worked out for the new sizes leave it without parts of theirs.
     * A line of the formulas that was left out stays out; one whose part was changed by hand is not worked out beside it.
     *
     * @param sameSizes whether parts listed or changed by hand fit the new piece
     */
    @Transactional
    public void copy(UUID fromJob, UUID from, UUID job, UUID piece, boolean sameSizes, UUID by) {
        jobs.holdOpen(job, by);
        List<PartRows.Row> byHand = sameSizes
                ? rows.ofPiece(fromJob, from).stream()
                        .filter(PartRows.Row::byHand)
                        .toList()
                : List.of();
        leftOut.of(from).forEach(rule -> leftOut.add(job, piece, rule));
        carry(job, piece, byHand, row -> !row.rule().isEmpty());
        takeOff(from, job, piece, by);
        carry(job, piece, byHand, row -> row.rule().isEmpty());
    }

    private void takeOff(UUID from, UUID job, UUID piece, UUID by) {
        TakeoffDesk.Answered answered = desk.answered(from);
        PieceFacts.Fact fact = pieces.of(job, piece);
        Recipe recipe = recipes.of(fact.kindId()).recipe();
        if (answered.version() != null
                && desk.worked(fact, recipe, answered.answers()).problems().isEmpty()) {
            desk.takeOff(job, piece, null, answered.answers(), by);
        }
    }

    private void carry(UUID job, UUID piece, List<PartRows.Row> byHand, Predicate<PartRows.Row> which) {
        List<PartRows.Row> some = byHand.stream().filter(which).toList();
        desk.guardRoom(job, some.size());
        int position = parts.lastPosition(piece);
        for (PartRows.Row row : some) {
            parts.save(Part.carried(Ids.next(), job, piece, ++position, row.details(), row.rule()));
        }
    }

    /** What was typed of a piece's takeoff by now; see {@link #clear}. */
    @Transactional(readOnly = true)
    public TypedTakeoff typed(UUID piece) {
        Map<UUID, Integer> versions = new HashMap<>();
        parts.byHand(piece).forEach(part -> versions.put(part.id(), part.version()));
        return new TypedTakeoff(
                takeoffs.findById(piece).map(PieceTakeoff::answers).orElse(""), versions);
    }

    /**
     * Takes the parts and answers of a piece out, so that the piece can go too.
     *
     * @param came what was typed when they came
     * @throws Refused where answers are others now, or parts were listed or changed by hand since
     */
    @Transactional
    public void clear(UUID job, UUID piece, TypedTakeoff came, UUID by) {
        jobs.holdOpen(job, by);
        guardTypedSince(job, piece, came);
        jdbc.sql("delete from part where job_id = ? and piece_id = ?")
                .params(job, piece)
                .update();
        jdbc.sql("delete from piece_takeoff where job_id = ? and id = ?")
                .params(job, piece)
                .update();
    }

    private void guardTypedSince(UUID job, UUID piece, TypedTakeoff came) {
        List<String> since = parts.byHand(piece).stream()
                .filter(part -> !came.has(part.id(), part.version()))
                .map(part -> part.details().name())
                .toList();
        String others = came.otherAnswers(typed(piece));
        if (!since.isEmpty()) {
            throw new Refused(
                    "Parts of \"" + name(job, piece) + "\" were listed or changed by hand since it was copied: "
                            + String.join(", ", since) + ". Take them out first, or leave the lines out one by one.");
        }
        if (!others.isEmpty()) {
            throw new Refused("\"" + name(job, piece) + "\" has other answers than it was copied with: " + others
                    + ". Answer as then, or leave the lines out one by one.");
        }
    }

    private String name(UUID job, UUID piece) {
        return pieces.of(job, piece).name();
    }
}
