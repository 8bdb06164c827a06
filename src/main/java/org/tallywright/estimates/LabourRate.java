package org.tallywright.estimates;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/**
 * The burdened cost of an hour of this job: given by hand, or each person's burdened rate x share, added up and rounded
 * to the cent once.
 *
 * @param parts the crew's shares, also shown beside a rate by hand
 */
public record LabourRate(@Nullable Money byHand, List<Part> parts) {

    /** @param burdened cost of this person's hour on the day, or null where no wage is known for it */
    public record Part(
            UUID person,
            String name,
            Percent share,
            @Nullable Money burdened) {}

    public LabourRate {
        parts = List.copyOf(parts);
    }

    /** Empty where nobody is named, or a wage is not known. */
    public Optional<Money> amount() {
        if (byHand != null) {
            return Optional.of(byHand);
        }
        BigDecimal sum = BigDecimal.ZERO;
        for (Part part : parts) {
            if (part.burdened() == null) {
                return Optional.empty();
            }
            sum = sum.add(part.burdened().amount().multiply(part.share().fraction()));
        }
        return parts.isEmpty() ? Optional.empty() : Optional.of(Money.of(sum));
    }

    /** Who has no wage on the day. */
    public List<String> unpaid() {
        return parts.stream().filter(p -> p.burdened() == null).map(Part::name).toList();
    }
}
