package org.tallywright.calibration.engine;

/**
 * What the engine did with an observation that could not be taken as it was; to be said on the screen.
 *
 * @param observation the finished task
 * @param treatment what was done
 */
public record Note(Observation observation, Treatment treatment) {

    /** The treatments. */
    public enum Treatment {
        /** Left out: no estimate above zero to compare with. */
        NO_ESTIMATE(false),
        /** Left out: finished without any hours logged, or with negative hours. */
        NO_HOURS(false),
        /** Kept with the fewest hours a task can count. */
        RAISED_TO_FEWEST(true),
        /** Kept, its ratio of actual to estimate cut at the largest the engine believes. */
        RATIO_CUT(true);

        private final boolean kept;

        Treatment(boolean kept) {
            this.kept = kept;
        }

        public boolean kept() {
            return kept;
        }
    }
}
