package org.tallywright.estimates;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;

/**
 * A bid as the client reads it, and what became of it.
 *
 * @param acceptedName who said yes, or empty
 * @param total without any option, tax included
 * @param agreed total with the options that were chosen
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
        Money total,
        Money agreed,
        List<Option> options,
        BidDocument document) {

    public BidPaper {
        options = List.copyOf(options);
    }

    /** A part that the client may take or leave. */
    public record Option(UUID id, String name, Money price, Money total, boolean chosen) {}

    public boolean accepted() {
        return standing == BidStanding.ACCEPTED;
    }

    public boolean chose(UUID option) {
        return options.stream().anyMatch(one -> one.id().equals(option) && one.chosen());
    }
}
