package org.tallywright.estimates;

import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/**
 * The rates of a working sum.
 *
 * @param labourRate the burdened cost of an hour given by hand, or null to take it from the crew's shares
 * @param crew shares that add up to 100, or none
 * @param contingencyName what the contingency is for, may be empty
 */
public record EstimateRates(
        @Nullable Money labourRate,
        List<CrewShare> crew,
        Money overheadRate,
        Percent contingencyPercent,
        String contingencyName,
        Margin margin,
        Money roundingStep,
        Percent taxPercent) {

    public EstimateRates {
        crew = crew.stream()
                .sorted(Comparator.comparing(CrewShare::sharePercent).reversed().thenComparing(CrewShare::personId))
                .toList();
    }
}
