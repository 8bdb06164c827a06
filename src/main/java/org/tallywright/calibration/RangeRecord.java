package org.tallywright.calibration;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What came of some ranges, each on one finished job.
 *
 * @param inside jobs that ended in the range that should hold four in five
 * @param under jobs that stayed under their P80
 * @param bias actual over the likely hours; null below three jobs
 * @param narrow the middle job's range: its low end over its likely hours
 * @param wide the same of its high end
 */
public record RangeRecord(
        Coverage inside, Coverage under, @Nullable MeanRatio bias, double narrow, double wide) {

    /** A range and the hours it was about. */
    record Case(HoursRange said, double actual) {}

    /** Empty without any. */
    static Optional<RangeRecord> of(List<Case> cases) {
        if (cases.isEmpty()) {
            return Optional.empty();
        }
        int n = cases.size();
        return Optional.of(new RangeRecord(
                Coverage.of(
                        (int) cases.stream()
                                .filter(c -> c.said().holds(c.actual()))
                                .count(),
                        n),
                Coverage.of(
                        (int) cases.stream()
                                .filter(c -> c.actual() <= c.said().p80())
                                .count(),
                        n),
                MeanRatio.of(cases.stream()
                                .mapToDouble(c -> c.actual() / c.said().median())
                                .toArray())
                        .orElse(null),
                Fitted.middle(cases.stream()
                        .mapToDouble(c -> c.said().low() / c.said().median())
                        .toArray()),
                Fitted.middle(cases.stream()
                        .mapToDouble(c -> c.said().high() / c.said().median())
                        .toArray())));
    }

    /**
     * How many times as wide the middle job's range is made, in hours, by a factor on the log scale: a range of 0.7 to 1.4 of the
     * likely hours widened by 1.2 runs from 0.65 to 1.50 and is 1.2 times as wide; one of 0.3 to 3 is 1.3 times as wide.
     */
    public double timesAsWide(double factor) {
        return wide <= narrow ? 1 : (Math.pow(wide, factor) - Math.pow(narrow, factor)) / (wide - narrow);
    }

    public int jobs() {
        return inside.of();
    }
}
