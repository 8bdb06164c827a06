package org.tallywright.estimates;

import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An option as typed.
 *
 * @param version the one that was read, or null for an option that the page takes for new
 * @param oneOf group of options that exclude each other, or empty
 * @param lines ids of tasks, material lines and other costs of the job
 */
public record OptionDraft(
        UUID id, @Nullable Integer version, String name, String words, String oneOf, Set<UUID> lines) {
    public OptionDraft {
        lines = Set.copyOf(lines);
    }
}
