package org.tallywright.costing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;

/**
 * How many hours may still be lost before nothing is left of the price:
 *
 * <pre>
 * left  = price - cost so far - remaining hours x planned cost of an hour - remaining material - remaining other
 * hours = left / planned cost of an hour
 * </pre>
 *
 * Remaining hours are the planned ones of tasks that are not finished less those logged on them; a task past its estimate
 * counts as nothing left to do. Planned cost of an hour is (labour + overhead) / hours of the plan. Negative: the job
 * loses money even if all that is left goes to plan.
 *
 * @param left in the shop's currency
 * @param minutes the same in minutes
 */
public record Slack(
        int remainingMinutes,
        BigDecimal remainingMaterial,
        BigDecimal remainingOther,
        BigDecimal costOfHour,
        BigDecimal left,
        int minutes) {

    /** Empty without a price, or where no hour was planned. */
    static Optional<Slack> of(
            CostSums planned,
            CostSums actual,
            List<TaskFigures> tasks,
            List<MaterialFigures> materials,
            boolean closed) {
        BigDecimal price = actual.price();
        BigDecimal hour = planned.costOfHour().orElse(BigDecimal.ZERO);
        if (price == null || hour.signum() <= 0) {
            return Optional.empty();
        }
        int minutes = closed
                ? 0
                : tasks.stream().mapToInt(TaskFigures::remainingMinutes).sum();
        BigDecimal material = closed
                ? BigDecimal.ZERO
                : materials.stream().map(MaterialFigures::remaining).reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal other = closed
                ? BigDecimal.ZERO
                : planned.other().subtract(actual.other()).max(BigDecimal.ZERO);
        BigDecimal work =
                hour.multiply(BigDecimal.valueOf(minutes)).divide(BigDecimal.valueOf(60), 2, RoundingMode.HALF_EVEN);
        BigDecimal left =
                price.subtract(actual.cost()).subtract(work).subtract(material).subtract(other);
        int inMinutes = left.multiply(BigDecimal.valueOf(60))
                .divide(hour, 0, RoundingMode.HALF_UP)
                .intValueExact();
        return Optional.of(
                new Slack(minutes, material, other, hour.setScale(2, RoundingMode.HALF_EVEN), left, inMinutes));
    }
}
