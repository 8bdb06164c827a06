package org.tallywright.calibration.engine;

/**
 * How often a person's actual hours equal the estimate that was shown, to the minute.
 *
 * @param worker the person
 * @param tasks finished tasks the person worked on
 * @param equal how many of them came to exactly the estimate
 */
public record CopiedHours(String worker, int tasks, int equal) {

    private static final int ENOUGH = 6;

    /** More than a third of at least six tasks: calibration from copied numbers is worth little. */
    public boolean suspicious() {
        return tasks >= ENOUGH && 3 * equal > tasks;
    }
}
