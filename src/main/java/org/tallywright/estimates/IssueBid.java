package org.tallywright.estimates;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;

/**
 * What the owner says when he issues a bid.
 *
 * @param id made by the page, so that a double tap issues once
 * @param version of the estimate that the words were read from, or null where the job had none of its own yet
 * @param addedDays of a change order: working days that it adds to the schedule, 0 to 365
 * @param seenTotal the total that the page showed; another one now is refused
 */
public record IssueBid(
        UUID id,
        @Nullable Integer version,
        String title,
        BidWords words,
        int validDays,
        int addedDays,
        Money seenTotal) {}
