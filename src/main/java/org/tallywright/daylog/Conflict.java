package org.tallywright.daylog;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A row whose entry was changed elsewhere after the page showed it.
 *
 * @param now the entry as it stands, or null where it was taken off the day
 */
public record Conflict(UUID row, @Nullable Entry now) {}
