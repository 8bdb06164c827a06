package org.tallywright.jobs;

import jakarta.persistence.EnumeratedValue;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/** Where a job stands between the first call and the last payment. */
public enum JobState {
    LEAD("lead", "Lead"),
    BIDDING("bidding", "Bidding"),
    RUNNING("running", "Running"),
    CLOSED("closed", "Closed"),
    LOST("lost", "Lost");

    @EnumeratedValue
    private final String code;

    private final String label;

    JobState(String code, String label) {
        this.code = code;
        this.label = label;
    }

    public static Optional<JobState> of(String code) {
        return Arrays.stream(values()).filter(s -> s.code.equals(code)).findFirst();
    }

    /** As stored and as used in addresses. */
    public String code() {
        return code;
    }

    public String label() {
        return label;
    }

    /** The states that may follow; a lead may be awarded on a handshake, without a bid. */
    public Set<JobState> next() {
        return switch (this) {
            case LEAD -> EnumSet.of(BIDDING, RUNNING, LOST);
            case BIDDING -> EnumSet.of(RUNNING, LOST);
            case RUNNING -> EnumSet.of(CLOSED);
            case CLOSED -> EnumSet.of(RUNNING);
            case LOST -> EnumSet.of(LEAD, BIDDING);
        };
    }

    @Override
    public String toString() {
        return label;
    }
}
