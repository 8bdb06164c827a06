package org.tallywright.estimates;

import java.util.UUID;

/** The number of a bid: the job's, and a mark counted on within the job. */
record BidNumber(UUID jobId, String jobNumber, BidKind kind, String mark) {
    /** The n-th option of this bid: "26-014 A.1". */
    BidNumber option(int n) {
        return new BidNumber(jobId, jobNumber, BidKind.OPTION, mark + "." + n);
    }

    String text() {
        return jobNumber + " " + mark;
    }
}
