package org.tallywright.estimates;

import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What the client answered to a bid: for the owner only.
 *
 * @param byLink else the owner recorded it
 * @param on the day of the yes, or of the no
 * @param at when it was recorded
 * @param name who said yes; empty for a no
 * @param promisedBefore the day that was promised for the job before a change moved it; null where it moved nothing
 * @param from network address, as the server saw it; empty for what the owner recorded
 */
public record BidAnswer(
        boolean yes,
        boolean byLink,
        LocalDate on,
        Instant at,
        String name,
        String from,
        Refusal reason,
        @Nullable LocalDate promisedBefore,
        @Nullable LocalDate promisedAfter) {}
