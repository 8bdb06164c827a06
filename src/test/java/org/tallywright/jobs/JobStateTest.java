package org.tallywright.jobs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.EnumSet;
import org.junit.jupiter.api.Test;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Refused;

class JobStateTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 25);

    private static Job job() {
        JobDetails details = new JobDetails(Ids.next(), Ids.next(), "Study", null, "");
        return new Job(Ids.next(), new JobNumber(2026, 14), DAY, details);
    }

    @Test
    void writesItsNumberAsYearAndSequence() {
        assertThat(job().number()).isEqualTo("26-014");
        assertThat(new JobNumber(2009, 1234)).hasToString("09-1234");
    }

    @Test
    void goesOnlyWhereItsStateLeads() {
        for (JobState from : JobState.values()) {
            assertThat(from.next()).isNotEmpty().doesNotContain(from);
            assertThat(JobState.of(from.code())).contains(from);
        }
        assertThat(JobState.CLOSED.next()).isEqualTo(EnumSet.of(JobState.RUNNING));
        assertThat(JobState.of("finished")).isEmpty();
    }

    @Test
    void isClosedOnlyWhileItRuns() {
        Job job = job();
        assertThatThrownBy(() -> job.close(DAY))
                .isInstanceOf(Refused.class)
                .hasMessage("A job that is lead cannot become closed.");
        job.award(DAY);
        job.close(DAY);
        assertThat(job.closedOn()).isEqualTo(DAY);
        assertThatThrownBy(() -> job.change(job.details())).hasMessageContaining("closed");
        job.reopen(JobState.RUNNING);
        assertThat(job.closedOn()).isNull();
        assertThat(job.acceptedOn()).isEqualTo(DAY);
    }
}
