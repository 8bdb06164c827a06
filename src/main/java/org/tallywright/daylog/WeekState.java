package org.tallywright.daylog;

import java.util.Arrays;
import java.util.Locale;
import org.tallywright.shared.Refused;

/** How far a person's week has come. */
public enum WeekState {
    OPEN("Open"),
    SUBMITTED("Handed in"),
    APPROVED("Approved"),
    LOCKED("Locked");

    private final String label;

    WeekState(String label) {
        this.label = label;
    }

    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    public String label() {
        return label;
    }

    /** Whether the hours of the week stand still. */
    public boolean fixed() {
        return this == APPROVED || this == LOCKED;
    }

    /** Why hours of that week are not changed any more. */
    public String refusal() {
        return this == LOCKED
                ? "This week is locked. Its hours change by a correction, with a reason."
                : "This week is approved. Have it sent back first, then change its hours.";
    }

    /** @throws Refused for any other word */
    public static WeekState of(String code) {
        return Arrays.stream(values())
                .filter(state -> state.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new Refused("This button is not known here. Open the week afresh."));
    }
}
