package org.tallywright.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.Duration;
import java.time.LocalDate;
import java.util.Objects;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.calibration.DaysEnd;
import org.tallywright.calibration.SamplePast;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

/** What moved a forecast since last week: the work of the week, and a newer calibration, told apart. */
@AppTest
class MovementSqlTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    @Autowired
    SamplePast past;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    DaysEnd daysEnd;

    @Autowired
    JobForecasts forecasts;

    @Autowired
    TestClock clock;

    @Autowired
    MockMvc mvc;

    @Autowired
    JdbcClient jdbc;

    private SignedIn ada;
    private JobRef job;
    private UUID sanding;
    private UUID fitting;

    private void keptAWeekAgo() {
        ada = people.owner();
        past.jobs(ada, 4, "1");
        job = jobs.running(ada, "Bookcase");
        jdbc.sql("update job set accepted_on = ?, opened_on = ? where id = ?")
                .params(TODAY, TODAY, job.id())
                .update();
        sanding = jobs.task(job, null, past.sanding(), "40", ada);
        fitting = jobs.task(job, null, past.fitting(), "3", ada);
        clock.advance(Duration.ofDays(1));
        daysEnd.keep();
        clock.advance(Duration.ofDays(6));
    }

    private void newerCalibration() {
        for (int n = 0; n < 6; n++) {
            past.job(ada, TODAY.minusDays(n), "2");
        }
        past.calibrated();
    }

    private Movement moved() {
        return Objects.requireNonNull(forecasts.of(job.id()).orElseThrow().moved());
    }

    private void see(String words) throws Exception {
        mvc.perform(get("/jobs/" + job.number() + "/forecast").with(signedIn(ada)))
                .andExpect(content().string(containsString(words)));
    }

    private static double calibration(Movement moved) {
        Double part = moved.calibration();
        return part == null ? Double.NaN : part;
    }

    private static void addsUp(Movement moved) {
        double parts = moved.tasks().stream().mapToDouble(Movement.Part::hours).sum();
        double calibration = moved.calibration() == null ? 0 : calibration(moved);
        assertThat(moved.then() + parts + moved.onNoLine() + moved.rest() + calibration)
                .isCloseTo(moved.now(), within(1e-9));
    }

    @Test
    void aNewerCalibrationAloneMovesNoTask() throws Exception {
        keptAWeekAgo();
        newerCalibration();
        Movement moved = moved();
        assertThat(moved.basis()).isEqualTo(Movement.Basis.NEWER_CALIBRATION);
        assertThat(moved.tasks()).isEmpty();
        assertThat(moved.rest()).isCloseTo(0, within(1e-6));
        assertThat(calibration(moved)).isGreaterThan(0.5);
        addsUp(moved);
        see("Another calibration: what is known of other jobs changed since");
        see("as kept at the end of Wed 25 Nov");
    }

    @Test
    void theWorkOfTheWeekIsMeasuredWithTheCalibrationOfThen() throws Exception {
        keptAWeekAgo();
        past.logged(job, sanding, "direct", 600, TODAY.plusDays(3), ada);
        jdbc.sql("update task set state = 'done', done_on = ? where id = ?")
                .params(TODAY.plusDays(3), sanding)
                .update();
        Movement alone = moved();
        assertThat(alone.basis()).isEqualTo(Movement.Basis.SAME_CALIBRATION);
        assertThat(calibration(alone)).isZero();
        addsUp(alone);
        newerCalibration();
        Movement both = moved();
        assertThat(both.tasks()).isEqualTo(alone.tasks());
        assertThat(both.tasks().get(0).fate()).isEqualTo(Movement.Fate.FINISHED);
        assertThat(both.tasks().get(0).now()).isEqualTo(10);
        addsUp(both);
        see("Sand to 150, finished");
    }

    @Test
    void tasksAddedAndDroppedSinceAreNamed() throws Exception {
        keptAWeekAgo();
        jobs.task(job, null, past.fitting(), "8", ada);
        jdbc.sql("update task set state = 'dropped' where id = ?")
                .param(fitting)
                .update();
        assertThat(moved().tasks())
                .extracting(Movement.Part::fate)
                .containsExactly(Movement.Fate.ADDED, Movement.Fate.DROPPED);
        see("Fit a panel, added");
        see("Fit a panel, dropped");
    }

    @Test
    void saysWhenTheCalibrationOfThenIsNoLongerKept() throws Exception {
        keptAWeekAgo();
        newerCalibration();
        jdbc.sql("update running_forecast set calibration_id = null").update();
        Movement moved = moved();
        assertThat(moved.basis()).isEqualTo(Movement.Basis.CALIBRATION_GONE);
        assertThat(moved.calibration()).isNull();
        addsUp(moved);
        see("The calibration of then is no longer kept");
    }

    @Test
    void saysWhenNothingWasKeptThatDay() throws Exception {
        keptAWeekAgo();
        past.logged(job, sanding, "direct", 60, TODAY, ada);
        jdbc.sql("delete from running_forecast").update();
        assertThat(moved().basis()).isEqualTo(Movement.Basis.WORKED_OUT);
        see("No forecast was kept a week ago, so both days are worked out");
    }
}
