package org.tallywright.web.stick;

import org.tallywright.shared.Hours;

/**
 * One stage on the stick.
 *
 * @param estimated person-hours estimated for it, not negative
 * @param logged person-hours logged on it, not negative
 */
public record StickStage(String name, Hours estimated, Hours logged, State state) {

    /** Where the work stands. */
    public enum State {
        AHEAD,
        UNDER_WAY,
        DONE,
        SKIPPED
    }

    public StickStage {
        if (estimated.isNegative() || logged.isNegative()) {
            throw new IllegalArgumentException("Hours on the stick are not negative: " + name);
        }
    }

    /** A stage of which only its state may be told, as to a client. */
    public static StickStage of(String name, State state) {
        return new StickStage(name, Hours.ZERO, Hours.ZERO, state);
    }

    /** Hours logged beyond the estimate, never negative. */
    Hours over() {
        return logged.compareTo(estimated) > 0 ? logged.minus(estimated) : Hours.ZERO;
    }
}
