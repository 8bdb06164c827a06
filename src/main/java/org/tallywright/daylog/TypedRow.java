package org.tallywright.daylog;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One row of a day sheet as it came back.
 *
 * @param id made by the page, so that a repeated save is recognised
 * @param version the version of the saved entry that the page showed; null for a row that was blank
 * @param content null where the box of a saved entry was emptied
 * @param typed the hours box as it was typed
 */
public record TypedRow(
        UUID id, @Nullable Integer version, @Nullable Content content, String typed) {}
