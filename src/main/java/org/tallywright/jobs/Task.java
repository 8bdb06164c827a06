package org.tallywright.jobs;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.LocalDate;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;

/** One task kind in one job: how much of it, what it is expected to take, and what became of it. */
@Entity
@Table(name = "task")
public class Task {
    private static final int MOST_MINUTES = 10_000_000;

    @Id
    private UUID id;

    private UUID jobId;
    private @Nullable UUID pieceId;
    private UUID taskKindId;
    private UUID stageId;
    private String name;
    private Quantity quantity;
    private Unit unit;
    private UnitHours startingUnitHours;
    private UnitHours unitHours;
    private int estimatedMinutes;

    @Enumerated(EnumType.STRING)
    private TaskState state;

    private @Nullable LocalDate plannedOn;
    private @Nullable UUID assignedTo;
    private @Nullable LocalDate startedOn;
    private @Nullable LocalDate doneOn;
    private @Nullable UUID doneBy;
    private @Nullable Quantity quantityDone;
    private boolean quantityConfirmed;
    private boolean neverNeeded;
    private int position;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected Task() {}

    @SuppressWarnings("NullAway.Init")
    Task(UUID id, UUID jobId, KindFacts.Kind kind, TaskDetails details, int position) {
        this.id = id;
        this.jobId = jobId;
        this.taskKindId = kind.id();
        this.unit = kind.unit();
        this.startingUnitHours = kind.unitHours();
        this.state = TaskState.PLANNED;
        this.position = position;
        write(details.filledFrom(kind));
    }

    /** Takes filled details only. */
    private void write(TaskDetails details) {
        pieceId = details.pieceId();
        stageId = Objects.requireNonNull(details.stageId());
        name = details.name();
        quantity = details.quantity();
        unitHours = Objects.requireNonNull(details.unitHours());
        estimatedMinutes = minutes(unitHours.times(quantity));
        plannedOn = details.plannedOn();
        assignedTo = details.assignedTo();
    }

    private static int minutes(Hours estimate) {
        if (estimate.minutes() > MOST_MINUTES) {
            throw new Refused("quantity", "That comes to more hours than can be kept here.");
        }
        return estimate.minutes();
    }

    void change(TaskDetails filled) {
        if (!filled.taskKindId().equals(taskKindId)) {
            throw new Refused("taskKind", "Drop this task and add another; its kind does not change.");
        }
        write(filled);
    }

    TaskDetails details() {
        return new TaskDetails(taskKindId, pieceId, stageId, name, quantity, unitHours, plannedOn, assignedTo);
    }

    void plan(@Nullable LocalDate on, @Nullable UUID person) {
        plannedOn = on;
        assignedTo = person;
    }

    void offer() {
        to(TaskState.OFFERED);
        neverNeeded = false;
    }

    void start(LocalDate on) {
        to(TaskState.STARTED);
        startedOn = on;
    }

    void finish(LocalDate on, UUID by, Quantity reallyDone, boolean confirmed) {
        to(TaskState.DONE);
        startedOn = startedOn == null || startedOn.isAfter(on) ? on : startedOn;
        doneOn = on;
        doneBy = by;
        quantityDone = reallyDone;
        quantityConfirmed = confirmed;
    }

    void drop(boolean neverNeeded) {
        to(TaskState.DROPPED);
        this.neverNeeded = neverNeeded;
    }

    /** Back to where it was before it was done or dropped; one that was offered comes into the plan. */
    void reopen() {
        to(startedOn == null ? TaskState.PLANNED : TaskState.STARTED);
        doneOn = null;
        doneBy = null;
        quantityDone = null;
        quantityConfirmed = false;
        neverNeeded = false;
    }

    private void to(TaskState next) {
        if (!state.next().contains(next)) {
            throw new Refused("A task that is " + state.code() + " cannot become " + next.code() + ".");
        }
        state = next;
    }

    boolean isDoneWith(Quantity reallyDone, boolean confirmed) {
        return state == TaskState.DONE && reallyDone.equals(quantityDone) && confirmed == quantityConfirmed;
    }

    public UUID id() {
        return id;
    }

    public UUID jobId() {
        return jobId;
    }

    public UUID taskKindId() {
        return taskKindId;
    }

    public UUID stageId() {
        return stageId;
    }

    public String name() {
        return name;
    }

    public Quantity quantity() {
        return quantity;
    }

    public Unit unit() {
        return unit;
    }

    public UnitHours unitHours() {
        return unitHours;
    }

    public UnitHours startingUnitHours() {
        return startingUnitHours;
    }

    /** Quantity x hours per unit, to the whole minute. */
    public Hours estimated() {
        return Hours.ofMinutes(estimatedMinutes);
    }

    public TaskState state() {
        return state;
    }

    public @Nullable Quantity quantityDone() {
        return quantityDone;
    }

    public boolean quantityConfirmed() {
        return quantityConfirmed;
    }

    public boolean neverNeeded() {
        return neverNeeded;
    }

    public @Nullable LocalDate doneOn() {
        return doneOn;
    }

    public int version() {
        return version == null ? 0 : version;
    }
}
