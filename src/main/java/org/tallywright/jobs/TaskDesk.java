package org.tallywright.jobs;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;

/** Plans the tasks of a job and records what became of them. */
@Service
public class TaskDesk {
    private static final Quantity MOST = Quantity.of(1_000_000);

    private final JobGate gate;
    private final Tasks tasks;
    private final Waits waits;
    private final Pieces pieces;
    private final KindFacts kinds;
    private final StageDesk stages;
    private final JobHistory history;
    private final ShopClock clock;

    TaskDesk(
            JobGate gate,
            Tasks tasks,
            Waits waits,
            Pieces pieces,
            KindFacts kinds,
            StageDesk stages,
            JobHistory history,
            ShopClock clock) {
        this.gate = gate;
        this.tasks = tasks;
        this.waits = waits;
        this.pieces = pieces;
        this.kinds = kinds;
        this.stages = stages;
        this.history = history;
        this.clock = clock;
    }

    /**
     * Adds a task, or changes it. The same id with the same details is a repeat; other details need the version that
     * was read.
     *
     * @param version null for a task that the page takes for new
     */
    @Transactional
    public Task save(UUID jobId, UUID taskId, @Nullable Integer version, TaskDetails asked, UUID by) {
        Job job = gate.holdOpen(jobId, by);
        Task known = tasks.findById(taskId).orElse(null);
        boolean keepsKind = known != null && known.details().taskKindId().equals(asked.taskKindId());
        TaskDetails details = keepsKind ? asked : asked.ofKind(kinds.countedAs(asked.taskKindId()));
        if (known == null) {
            if (version != null) {
                throw new NotHere("task");
            }
            return add(job, taskId, details, by);
        }
        TaskDetails filled = details.filledFrom(checked(known.jobId(), jobId, details));
        if (!known.details().equals(filled)) {
            if (version == null || version != known.version()) {
                throw new Stale("task");
            }
            known.change(filled);
        }
        return known;
    }

    /** Several new tasks at once, such as those that a piece proposes; all or none. */
    @Transactional
    public void addAll(UUID jobId, Map<UUID, TaskDetails> proposed, UUID by) {
        proposed.forEach((id, details) -> save(jobId, id, null, details, by));
    }

    private Task add(Job job, UUID taskId, TaskDetails details, UUID by) {
        KindFacts.Kind kind = checked(job.id(), job.id(), details);
        int position = tasks.lastPosition(job.id()) + 1;
        // Flushed: the event below refers to it, and inserts are grouped by table.
        Task task = tasks.saveAndFlush(new Task(taskId, job.id(), kind, details, position));
        history.task(task, "", clock.today(), by, "");
        return task;
    }

    private KindFacts.Kind checked(UUID ownerId, UUID jobId, TaskDetails details) {
        if (!ownerId.equals(jobId)) {
            throw new NotHere("task");
        }
        if (details.quantity().compareTo(MOST) > 0) {
            throw new Refused("quantity", "That is more than can be kept here.");
        }
        if (details.pieceId() != null && !pieces.existsByIdAndJobId(details.pieceId(), jobId)) {
            throw new Refused("piece", "Pick a piece of this job.");
        }
        if (details.stageId() != null && !kinds.stageExists(details.stageId())) {
            throw new Refused("stage", "Pick a stage of the shop.");
        }
        if (details.assignedTo() != null && !kinds.isCrew(details.assignedTo())) {
            throw new Refused("assignedTo", "Pick somebody of the crew.");
        }
        return kinds.find(details.taskKindId())
                .orElseThrow(() -> new Refused("taskKind", "Pick a task kind of the catalogue."));
    }

    /** Started; a task that is past planning stays as it is. */
    @Transactional
    public void start(UUID jobId, UUID taskId, UUID by) {
        gate.holdOpen(jobId, by);
        started(find(jobId, taskId), clock.today(), by);
    }

    /** Hours were logged on the task: a planned one has started. Nothing happens in a closed job. */
    @Transactional
    public void workedOn(UUID jobId, UUID taskId, LocalDate on, UUID by) {
        if (gate.hold(jobId, by).state() != JobState.CLOSED) {
            started(find(jobId, taskId), on, by);
        }
    }

    private void started(Task task, LocalDate on, UUID by) {
        if (task.state() == TaskState.PLANNED || task.state() == TaskState.OFFERED) {
            String from = task.state().code();
            task.start(on);
            history.task(task, from, on, by, "");
            stages.enterIfAhead(task.jobId(), task.stageId(), on, by);
        }
    }

    /**
     * Done: keeps what it really came to and starts the waits of its kind. The same again is a repeat.
     *
     * @return the waits that began, in their order
     */
    @Transactional
    public List<Wait> finish(UUID jobId, UUID taskId, int version, Finish finish, UUID by) {
        gate.holdOpen(jobId, by);
        Task task = find(jobId, taskId);
        if (task.isDoneWith(finish.quantity(), finish.confirmed())) {
            return waits.findByTaskIdOrderByPosition(taskId);
        }
        if (task.version() != version) {
            throw new Stale("task");
        }
        guard(finish);
        String from = task.state().code();
        LocalDate on = clock.dateOf(finish.at());
        task.finish(on, by, finish.quantity(), finish.confirmed());
        history.task(task, from, on, by, "");
        stages.enterIfAhead(jobId, task.stageId(), on, by);
        return kinds.waits(task.taskKindId()).stream()
                .map(kind -> waits.save(new Wait(Ids.next(), task, kind, finish.at(), by)))
                .toList();
    }

    private void guard(Finish finish) {
        if (finish.at().isAfter(clock.now())) {
            throw new Refused("doneAt", "A task cannot be finished in the future.");
        }
        if (finish.quantity().compareTo(MOST) > 0) {
            throw new Refused("quantity", "That is more than can be kept here.");
        }
    }

    /** Not done after all: left out, or never needed. */
    @Transactional
    public void drop(UUID jobId, UUID taskId, boolean neverNeeded, UUID by) {
        gate.holdOpen(jobId, by);
        Task task = find(jobId, taskId);
        if (task.state() != TaskState.DROPPED) {
            String from = task.state().code();
            task.drop(neverNeeded);
            history.task(task, from, clock.today(), by, "");
        }
    }

    /** The client is asked about it first: out of the plan until he agrees. A task that was begun stays; a dropped one comes back. */
    @Transactional
    public void offer(UUID jobId, UUID taskId, LocalDate on, UUID by, String note) {
        Task task = find(jobId, taskId);
        if (task.state() == TaskState.PLANNED || task.state() == TaskState.DROPPED) {
            String from = task.state().code();
            task.offer();
            history.task(task, from, on, by, note);
        }
    }

    /**
     * What was offered is work to be done. Any other task stays as it is.
     *
     * @param by null when the client decided by his link; the caller then names who acts in the trail
     */
    @Transactional
    public void agree(UUID jobId, UUID taskId, LocalDate on, @Nullable UUID by, String note) {
        Task task = find(jobId, taskId);
        if (task.state() == TaskState.OFFERED) {
            String from = task.state().code();
            task.reopen();
            history.task(task, from, on, by, note);
        }
    }

    /**
     * Offered or planned, but the client did not take it. A task that was begun stays.
     *
     * @param by null when the client decided by his link; the caller then names who acts in the trail
     */
    @Transactional
    public void leaveOut(UUID jobId, UUID taskId, LocalDate on, @Nullable UUID by, String note) {
        Task task = find(jobId, taskId);
        if (task.state() == TaskState.PLANNED || task.state() == TaskState.OFFERED) {
            String from = task.state().code();
            task.drop(true);
            history.task(task, from, on, by, note);
        }
    }

    /**
     * Takes back a finish or a drop; the waits that the finish started go with it. One that was offered comes into the plan. An
     * open task stays as it is.
     */
    @Transactional
    public void reopen(UUID jobId, UUID taskId, UUID by) {
        gate.holdOpen(jobId, by);
        Task task = find(jobId, taskId);
        if (!task.state().isOpen()) {
            boolean offered = task.state() == TaskState.OFFERED;
            String from = task.state().code();
            task.reopen();
            waits.deleteByTaskId(taskId);
            history.task(task, from, clock.today(), by, offered ? "before the client agreed" : "taken back");
        }
    }

    private Task find(UUID jobId, UUID taskId) {
        return tasks.findByIdAndJobId(taskId, jobId).orElseThrow(() -> new NotHere("task"));
    }
}
