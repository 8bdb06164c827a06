package org.tallywright.estimates;

/** What became of an issued bid, as kept. Whether it has run out or been followed by a newer one is told by the day. */
public enum BidState {
    ISSUED("issued"),
    ACCEPTED("accepted"),
    DECLINED("declined"),
    WITHDRAWN("withdrawn");

    private final String code;

    BidState(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }

    public static BidState of(String code) {
        for (BidState state : values()) {
            if (state.code.equals(code)) {
                return state;
            }
        }
        throw new IllegalArgumentException(code);
    }
}
