package org.tallywright.past;

import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.estimates.EstimateLines;
import org.tallywright.estimates.MaterialDraft;
import org.tallywright.estimates.OtherDraft;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDesk;
import org.tallywright.jobs.TaskDesk;
import org.tallywright.jobs.TaskDetails;
import org.tallywright.shared.Money;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.takeoff.TakeoffCopy;

/** Copies past work into a job that is being estimated, all or nothing. */
@Service
public class Copyist {
    private final JobDesk jobs;
    private final PieceDesk pieces;
    private final TaskDesk tasks;
    private final EstimateLines lines;
    private final TakeoffCopy takeoff;
    private final Copies copies;
    private final CopiedTakeoffs takeoffs;
    private final EntityManager entities;
    private final JdbcClient jdbc;

    Copyist(
            JobDesk jobs,
            PieceDesk pieces,
            TaskDesk tasks,
            EstimateLines lines,
            TakeoffCopy takeoff,
            Copies copies,
            CopiedTakeoffs takeoffs,
            EntityManager entities,
            JdbcClient jdbc) {
        this.jobs = jobs;
        this.pieces = pieces;
        this.tasks = tasks;
        this.lines = lines;
        this.takeoff = takeoff;
        this.copies = copies;
        this.takeoffs = takeoffs;
        this.entities = entities;
        this.jdbc = jdbc;
    }

    /**
     * Copied work is nobody's yet and on no day; nothing is logged on it, and the past job stays as it is.
     *
     * @throws Refused for a closed job, one whose bid was accepted, the past job itself, and where nothing is ticked
     * @throws Stale where something else was copied under that id, or that copy was taken out since
     */
    @Transactional
    public void copy(UUID job, CopyPlan plan, UUID by) {
        JobRef into = jobs.holdOpen(job, by);
        Copies.Known known = copies.known(plan.id()).orElse(null);
        if (known != null) {
            guardRepeat(known, job, plan);
            return;
        }
        guard(into, plan.from().ref());
        if (plan.isEmpty()) {
            throw new Refused("Tick what is to be copied.");
        }
        List<Copies.Line> added = new ArrayList<>();
        addPieces(job, plan, added, by);
        addTasks(job, plan, added, by);
        addMaterials(job, plan, added, by);
        addCosts(job, plan, added, by);
        // The record refers to them, and reads beside the aggregates.
        entities.flush();
        copies.add(plan, job, added, by);
        addParts(job, plan, by);
    }

    private static void guardRepeat(Copies.Known known, UUID job, CopyPlan plan) {
        if (!known.job().equals(job)) {
            throw new NotHere("copy");
        }
        boolean another = known.content() != null && !known.content().equals(plan.content());
        if (known.takenOut() || another) {
            throw new Stale("copy");
        }
    }

    /** Whether a copy of that id was made already, so that what is sent now is no new one. */
    @Transactional(readOnly = true)
    public boolean knows(UUID copy) {
        return copies.known(copy).isPresent();
    }

    /**
     * Whether anything may be copied into a job, for pages that offer it too.
     *
     * @throws Refused as {@link #copy}
     */
    @Transactional(readOnly = true)
    public void guard(JobRef into, JobRef from) {
        into.guardOpen();
        if (into.id().equals(from.id())) {
            throw new Refused("That is this job itself; copy from another one.");
        }
        jdbc.sql("select number from bid where job_id = ? and kind = 'bid' and state = 'accepted'")
                .param(into.id())
                .query(String.class)
                .optional()
                .ifPresent(number -> {
                    throw new Refused("Bid " + number + " was accepted, so the estimate of " + into.number()
                            + " stays as agreed. Add the lines of a change one by one, or copy into another job.");
                });
    }

    private void addPieces(UUID job, CopyPlan plan, List<Copies.Line> added, UUID by) {
        for (CopyPlan.PieceLine piece : plan.pieces()) {
            if (piece.into() != null) {
                continue;
            }
            UUID id = plan.idOf(piece.source());
            pieces.save(job, id, null, piece.details(), by);
            // So that the next one takes the next place, and tasks may refer to it.
            entities.flush();
            added.add(new Copies.Line(Copies.Sort.PIECE, id, piece.origin()));
        }
    }

    private void addTasks(UUID job, CopyPlan plan, List<Copies.Line> added, UUID by) {
        for (CopyPlan.TaskLine task : plan.tasks()) {
            UUID id = plan.idOf(task.source());
            TaskDetails details = new TaskDetails(
                    task.kindId(),
                    plan.pieceOf(task.piece()),
                    null,
                    task.name(),
                    task.quantity(),
                    task.rate(),
                    null,
                    null);
            tasks.save(job, id, null, details, by);
            added.add(new Copies.Line(Copies.Sort.TASK, id, task.origin()));
        }
    }

    private void addMaterials(UUID job, CopyPlan plan, List<Copies.Line> added, UUID by) {
        for (CopyPlan.MaterialLine line : plan.materials()) {
            UUID id = plan.idOf(line.source());
            lines.save(
                    job,
                    new MaterialDraft(
                            id,
                            null,
                            plan.pieceOf(line.piece()),
                            line.materialId(),
                            new NetQuantity(line.net()),
                            null,
                            line.price(),
                            Money.ZERO),
                    by);
            added.add(new Copies.Line(Copies.Sort.MATERIAL, id, line.origin()));
        }
    }

    private void addCosts(UUID job, CopyPlan plan, List<Copies.Line> added, UUID by) {
        for (PastCost cost : plan.costs()) {
            UUID id = plan.idOf(cost.id());
            lines.save(job, new OtherDraft(id, null, cost.sort(), cost.description(), cost.amount()), by);
            added.add(new Copies.Line(Copies.Sort.OTHER, id, "As in " + plan.what()));
        }
    }

    private void addParts(UUID job, CopyPlan plan, UUID by) {
        UUID from = plan.from().ref().id();
        for (CopyPlan.PieceLine piece : plan.pieces()) {
            if (piece.parts() && piece.into() == null) {
                UUID id = plan.idOf(piece.source());
                takeoff.copy(from, piece.source(), job, id, piece.sameSizes(), by);
                takeoffs.keep(plan.id(), job, id, takeoff.typed(id));
            }
        }
    }
}
