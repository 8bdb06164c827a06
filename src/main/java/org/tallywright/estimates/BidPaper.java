package org.tallywright.estimates;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.Refused;

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

    /**
     * A part that the client may take or leave.
     *
     * @param oneOf group of options that exclude each other, or empty
     */
    public record Option(UUID id, String name, String oneOf, Money price, Money total, boolean chosen) {}

    /** @throws Refused where two of them are of one group */
    public static void guardOneOfEach(List<Option> options, Set<UUID> taken) {
        Map<String, Option> picked = new HashMap<>();
        for (Option option : options) {
            if (!option.oneOf().isEmpty() && taken.contains(option.id())) {
                Option other = picked.put(option.oneOf().toLowerCase(Locale.ROOT), option);
                if (other != null) {
                    throw new Refused(
                            "options",
                            "Take one of \u201c" + other.name() + "\u201d and \u201c" + option.name()
                                    + "\u201d, or neither: they are both \u201c" + option.oneOf() + "\u201d.");
                }
            }
        }
    }

    /** Total with these of its options. */
    public Money totalWith(Ticks ticks) {
        return total.plus(Money.sum(options.stream()
                .filter(option -> ticks.holds(option.id()))
                .map(Option::total)
                .toList()));
    }

    public boolean accepted() {
        return standing == BidStanding.ACCEPTED;
    }

    public boolean chose(UUID option) {
        return options.stream().anyMatch(one -> one.id().equals(option) && one.chosen());
    }
}
