package org.tallywright.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.event.ApplicationEvents;
import org.springframework.test.context.event.RecordApplicationEvents;
import org.tallywright.AppTest;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

/** What other modules hear of the end of a job. */
@AppTest
@RecordApplicationEvents
class JobClosingSqlTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    @Autowired
    JobDesk desk;

    @Autowired
    SampleJobs sample;

    @Autowired
    SamplePeople people;

    @Autowired
    ApplicationEvents events;

    @Test
    void tellsOnceThatAJobIsClosedAndReopened() {
        SignedIn ada = people.owner();
        JobRef job = sample.running(ada, "Study");
        desk.close(job.id(), Closing.PLAIN, ada.personId());
        desk.close(job.id(), Closing.PLAIN, ada.personId());
        assertThat(events.stream(JobClosed.class)).containsExactly(new JobClosed(job.id(), TODAY, ada.personId()));
        desk.reopen(job.id(), "one more shelf", ada.personId());
        desk.reopen(job.id(), "one more shelf", ada.personId());
        assertThat(events.stream(JobReopened.class)).containsExactly(new JobReopened(job.id(), TODAY, ada.personId()));
    }
}
