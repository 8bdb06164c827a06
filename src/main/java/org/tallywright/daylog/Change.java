package org.tallywright.daylog;

import java.util.UUID;
import org.tallywright.shared.NotUnderstood;

/**
 * One thing a save did, enough to take it back.
 *
 * @param version the entry's version after it
 */
public record Change(Act act, UUID id, int version) {
    /** As the trail names them. */
    public enum Act {
        INSERT,
        UPDATE,
        DELETE
    }

    /** As a form carries it: {@code i:<id>:<version>}. */
    public String code() {
        return act.name().toLowerCase(java.util.Locale.ROOT).charAt(0) + ":" + id + ":" + version;
    }

    /** @throws NotUnderstood for anything that {@link #code} did not write */
    public static Change of(String code) {
        String[] parts = code.split(":", -1);
        try {
            if (parts.length == 3 && parts[1].length() == 36 && parts[2].matches("\\d{1,9}")) {
                for (Act act : Act.values()) {
                    Change change = new Change(act, UUID.fromString(parts[1]), Integer.parseInt(parts[2]));
                    if (change.code().equals(code)) {
                        return change;
                    }
                }
            }
        } catch (IllegalArgumentException e) {
            // Said below.
        }
        throw new NotUnderstood("This cannot be taken back any more.");
    }
}
