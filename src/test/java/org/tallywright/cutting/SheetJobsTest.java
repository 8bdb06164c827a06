package org.tallywright.cutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The first eight of the thirty measured jobs, two for each share of grain; all of them are in the benchmark. */
class SheetJobsTest {
    private static final int JOBS = 8;

    @Test
    void takesAtMostOneSheetMoreThanTheirArea() {
        int over = IntStream.range(0, JOBS)
                .map(number -> {
                    SheetJobs job = SheetJobs.of(number);
                    SheetPlan plan = job.plan();
                    job.check(plan);
                    assertThat(plan.bought()).as("job %s", number).isBetween(plan.areaBound(), plan.areaBound() + 1);
                    return plan.bought() - plan.areaBound();
                })
                .sum();
        // One of them at the bound itself.
        assertThat(over).isLessThanOrEqualTo(JOBS - 1);
    }
}
