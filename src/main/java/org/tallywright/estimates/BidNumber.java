package org.tallywright.estimates;

import java.util.UUID;

/** The number of a bid: the job's, and a mark counted on within the job. */
record BidNumber(UUID jobId, String jobNumber, BidKind kind, String mark) {
    String text() {
        return jobNumber + " " + mark;
    }
}
