package org.tallywright.estimates;

import java.time.LocalDate;

/** How a bid stands on a day. */
public enum BidStanding {
    OPEN("open"),
    EXPIRED("expired"),
    /** A newer bid of the job was issued after it. */
    SUPERSEDED("superseded"),
    ACCEPTED("accepted"),
    DECLINED("declined"),
    WITHDRAWN("withdrawn");

    private final String word;

    BidStanding(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    public boolean isOpen() {
        return this == OPEN;
    }

    static BidStanding of(BidState state, LocalDate validUntil, boolean followed, LocalDate today) {
        return switch (state) {
            case ACCEPTED -> ACCEPTED;
            case DECLINED -> DECLINED;
            case WITHDRAWN -> WITHDRAWN;
            case ISSUED -> followed ? SUPERSEDED : today.isAfter(validUntil) ? EXPIRED : OPEN;
        };
    }
}
