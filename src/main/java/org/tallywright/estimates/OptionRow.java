package org.tallywright.estimates;

import java.util.UUID;

/**
 * An option of a job's working sum.
 *
 * @param oneOf group of options that exclude each other, or empty
 * @param fate empty while it is not decided; "chosen" or "declined" since a bid with it was accepted
 */
public record OptionRow(UUID id, int version, String name, String words, String oneOf, String fate) {
    public static final String CHOSEN = "chosen";
    public static final String DECLINED = "declined";

    public boolean isOpen() {
        return fate.isEmpty();
    }
}
