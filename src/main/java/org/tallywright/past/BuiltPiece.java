package org.tallywright.past;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.catalog.Measure;
import org.tallywright.jobs.PieceDetails;

/**
 * A piece of some job as the list of past work has it.
 *
 * @param kind name of its kind, empty where it has none
 * @param finished the day its job was closed, else its last task was done; null where nothing is done
 * @param built all its tasks are done or left out, and at least one is done
 * @param closed whether its job is closed and has a review
 */
public record BuiltPiece(
        UUID id,
        UUID jobId,
        String number,
        String title,
        String client,
        String kind,
        PieceDetails details,
        @Nullable LocalDate finished,
        boolean built,
        boolean closed) {

    /** What its hours and material are divided by; empty where a size is missing. */
    public Optional<BigDecimal> measure(Measure natural) {
        return PastPiece.shape(details).measure(natural);
    }

    /**
     * What it took, in minutes.
     *
     * @param minutes of the hour classes that count in a rate
     * @param beside rework, call-backs and standby
     */
    public record Took(int estimated, int minutes, int rework, int callBack, int standby) {
        public static final Took NOTHING = new Took(0, 0, 0, 0, 0);

        public int beside() {
            return rework + callBack + standby;
        }
    }
}
