package org.tallywright.estimates;

import java.util.UUID;

/**
 * An option of a job's working sum.
 *
 * @param oneOf group of options that exclude each other, or empty
 * @param held how many lines it holds, those of dropped tasks too
 * @param fate empty while it is not decided; "chosen" or "declined" since a bid with it was accepted
 */
public record OptionRow(UUID id, int version, String name, String words, String oneOf, int held, String fate) {
    public static final String CHOSEN = "chosen";
    public static final String DECLINED = "declined";

    /** Left out by the client, and not offered again since. */
    public boolean canBeOfferedAgain() {
        return fate.equals(DECLINED) && held > 0;
    }

    /** Whether the other one is of the same group and in the job or on its way there: taken, or offered again by itself. */
    boolean excludes(OptionRow other) {
        return !oneOf.isEmpty()
                && oneOf.equalsIgnoreCase(other.oneOf)
                && !id.equals(other.id)
                && (other.fate.equals(CHOSEN) || other.fate.equals(DECLINED) && other.held == 0);
    }

    public boolean isOpen() {
        return fate.isEmpty();
    }
}
