package org.tallywright.shared;

import java.util.Arrays;
import java.util.Optional;

/** What kind of time an entry is. */
public enum HourClass {
    DIRECT("direct", "Direct", true),
    SET_UP("set-up", "Set-up", true),
    REWORK("rework", "Rework", false),
    CALL_BACK("call-back", "Call-back", false),
    TRAVEL("travel", "Travel", true),
    SUPPLY_RUN("supply run", "Supply run", true),
    STANDBY("standby", "Standby", false),
    CLEAN_UP("clean-up", "Clean-up", true),
    OFFICE("office", "Office", true);

    private final String code;
    private final String label;
    private final boolean countsInRate;

    HourClass(String code, String label, boolean countsInRate) {
        this.code = code;
        this.label = label;
        this.countsInRate = countsInRate;
    }

    /** Reads a code or a label, however it is hyphenated. */
    public static HourClass of(String typed) {
        return find(typed)
                .orElseThrow(
                        () -> new NotUnderstood("\"" + Decimals.shown(typed) + "\" is not an hour class; use direct,"
                                + " set-up, rework, call-back, travel, supply run, standby, clean-up or office."));
    }

    static Optional<HourClass> find(String typed) {
        String key = key(typed);
        return Arrays.stream(values()).filter(c -> key(c.code).equals(key)).findFirst();
    }

    private static String key(String words) {
        return Decimals.tidy(words).replaceAll("[ _-]", "");
    }

    public String code() {
        return code;
    }

    public String label() {
        return label;
    }

    /**
     * Whether the hours belong to the hours per unit of the task kind they were logged on. Set-up and clean-up do, by
     * common practice; rework, call-backs and standby stay out of the rate and in the job's cost.
     */
    public boolean countsInRate() {
        return countsInRate;
    }

    @Override
    public String toString() {
        return label;
    }
}
