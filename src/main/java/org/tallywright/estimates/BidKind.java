package org.tallywright.estimates;

/** A first offer for a job, or one for a change after that was accepted. */
public enum BidKind {
    BID("bid"),
    CHANGE_ORDER("change order"),
    /** A part of either that the client may take or leave. */
    OPTION("option");

    private final String code;

    BidKind(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }

    public static BidKind of(String code) {
        for (BidKind kind : values()) {
            if (kind.code.equals(code)) {
                return kind;
            }
        }
        throw new IllegalArgumentException(code);
    }

    /** "Bid", "Change order". */
    public String label() {
        return Character.toUpperCase(code.charAt(0)) + code.substring(1);
    }

    /** Bids run A, B ... Z, AA; change orders CO-1, CO-2. */
    String mark(int before) {
        return this == CHANGE_ORDER ? "CO-" + (before + 1) : letters(before);
    }

    private static String letters(int before) {
        String last = String.valueOf((char) ('A' + before % 26));
        return before < 26 ? last : letters(before / 26 - 1) + last;
    }
}
