package org.tallywright.jobs;

import java.util.Map;
import java.util.UUID;

/**
 * What the owner says when closing a job.
 *
 * @param tasks what became of each task that is still open
 * @param punchItemsStay the job closes with its open punch list items open
 * @param withoutWalkThrough the job closes though no walk-through was recorded
 */
public record Closing(Map<UUID, TaskAnswer> tasks, boolean punchItemsStay, boolean withoutWalkThrough) {
    /** Nothing is open, nothing needs saying. */
    public static final Closing PLAIN = new Closing(Map.of(), false, true);

    /** What became of a task that nobody marked. */
    public enum TaskAnswer {
        /** It was done, as far as anybody knows in the quantity planned. */
        DONE,
        /** The work turned out not to be needed. */
        NEVER_NEEDED,
        /** It was needed but left out. */
        DROPPED
    }
}
