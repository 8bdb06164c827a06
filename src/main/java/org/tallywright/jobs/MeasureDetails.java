package org.tallywright.jobs;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;

/**
 * One reading taken on site.
 *
 * @param pieceId null for a measure of the room or the whole job
 */
public record MeasureDetails(@Nullable UUID pieceId, String name, Length length, LocalDate measuredOn, String note) {}
