package org.tallywright.estimates;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A bid as the client reads it, and what became of it.
 *
 * @param acceptedName who said yes, or empty
 */
public record BidPaper(
        UUID id,
        UUID jobId,
        BidKind kind,
        String number,
        BidStanding standing,
        LocalDate validUntil,
        @Nullable LocalDate acceptedOn,
        String acceptedName,
        BidDocument document) {}
