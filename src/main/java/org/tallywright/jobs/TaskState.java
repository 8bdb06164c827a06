package org.tallywright.jobs;

import jakarta.persistence.EnumeratedValue;
import java.util.EnumSet;
import java.util.Set;

/** Where a task stands. */
public enum TaskState {
    /** In an option or a change order that the client has not agreed to: not in the plan. */
    OFFERED("offered", "Not agreed"),
    PLANNED("planned", "Planned"),
    STARTED("started", "Started"),
    DONE("done", "Done"),
    DROPPED("dropped", "Dropped");

    @EnumeratedValue
    private final String code;

    private final String label;

    TaskState(String code, String label) {
        this.code = code;
        this.label = label;
    }

    public static TaskState of(String code) {
        return valueOf(code.toUpperCase(java.util.Locale.ROOT));
    }

    public String code() {
        return code;
    }

    public String label() {
        return label;
    }

    /** In the plan and still to be worked on. */
    public boolean isOpen() {
        return this == PLANNED || this == STARTED;
    }

    /** The states that may follow; done and dropped lead back to where the task was before. */
    public Set<TaskState> next() {
        return switch (this) {
            case OFFERED -> EnumSet.of(PLANNED, STARTED, DONE, DROPPED);
            case PLANNED -> EnumSet.of(OFFERED, STARTED, DONE, DROPPED);
            case STARTED -> EnumSet.of(PLANNED, DONE, DROPPED);
            case DONE -> EnumSet.of(PLANNED, STARTED);
            case DROPPED -> EnumSet.of(OFFERED, PLANNED, STARTED);
        };
    }

    @Override
    public String toString() {
        return label;
    }
}
