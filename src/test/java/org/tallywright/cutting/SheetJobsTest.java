package org.tallywright.cutting;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Four of the thirty measured jobs, one for each share of grain; all of them are in the benchmark. */
class SheetJobsTest {
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void takesAtMostOneSheetMoreThanTheirArea(int number) {
        SheetJobs job = SheetJobs.of(number);

        SheetPlan plan = job.plan();

        SheetCheck.check(plan, job.parts(), job.kerf(), job.trim());
        assertThat(plan.bought()).isBetween(plan.areaBound(), plan.areaBound() + 1);
    }
}
