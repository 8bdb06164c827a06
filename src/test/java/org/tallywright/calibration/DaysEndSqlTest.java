package org.tallywright.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.calibration.engine.PastForecast;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.jobs.StickOutlook;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

/** What is said of running jobs is kept at each day's end, and judged when they are closed. */
@AppTest
class DaysEndSqlTest {
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
    Forecaster forecaster;

    @Autowired
    JobDesk jobDesk;

    @Autowired
    StickOutlook stick;

    @Autowired
    CalibrationRows calibrations;

    @Autowired
    Shelf shelf;

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

    /** Four hours of sanding and three of fitting, begun today. */
    private void running() {
        ada = people.owner();
        past.jobs(ada, 4, "1");
        job = jobs.running(ada, "Bookcase");
        jdbc.sql("update job set accepted_on = ?, opened_on = ? where id = ?")
                .params(TODAY.minusDays(1), TODAY.minusDays(1), job.id())
                .update();
        sanding = jobs.task(job, null, past.sanding(), "40", ada);
        fitting = jobs.task(job, null, past.fitting(), "3", ada);
    }

    private void nextDay() {
        clock.advance(Duration.ofDays(1));
        daysEnd.keep();
    }

    private void done(UUID task, int minutes, LocalDate on) {
        past.logged(job, task, "direct", minutes, on, ada);
        jdbc.sql("update task set state = 'done', done_on = ? where id = ?")
                .params(on, task)
                .update();
    }

    private List<String> kept() {
        return jdbc.sql("""
                        select on_date || ' ' || coalesce(stage, 0) || ' ' || round(hours_so_far::numeric, 1) from running_forecast
                        where job_id = ? order by on_date""").param(job.id()).query(String.class).list();
    }

    @Test
    void keepsADayOnWhichSomethingChangedAndNoOther() {
        running();
        nextDay();
        assertThat(kept()).containsExactly("2026-11-25 0 0.0");
        daysEnd.keep();
        nextDay();
        assertThat(kept()).as("nothing changed").hasSize(1);
        past.logged(job, sanding, "direct", 90, TODAY.plusDays(2), ada);
        nextDay();
        nextDay();
        assertThat(kept()).containsExactly("2026-11-25 0 0.0", "2026-11-27 0 1.5");
    }

    @Test
    void aCalibrationOfTodaySaidNothingYesterday() {
        running();
        clock.advance(Duration.ofDays(1));
        past.job(ada, TODAY, "2");
        past.calibrated();
        daysEnd.keep();
        assertThat(kept()).isEmpty();
        nextDay();
        assertThat(kept()).containsExactly("2026-11-26 0 0.0");
    }

    @Test
    void lookingAtAPageKeepsNothing() throws Exception {
        running();
        clock.advance(Duration.ofDays(2));
        for (String path : List.of("/jobs/" + job.number() + "/forecast", "/jobs/" + job.number(), "/calibration")) {
            mvc.perform(get(path).with(signedIn(ada)));
        }
        assertThat(kept()).isEmpty();
    }

    @Test
    void theFirstOneAtAStageIsMarkedAndJudgedWhenTheJobIsClosed() throws Exception {
        running();
        done(sanding, 300, TODAY);
        nextDay();
        past.logged(job, fitting, "direct", 60, TODAY.plusDays(1), ada);
        nextDay();
        assertThat(kept()).containsExactly("2026-11-25 50 5.0", "2026-11-26 0 6.0");
        done(fitting, 120, TODAY.plusDays(2));
        jdbc.sql("update job set state = 'closed', closed_on = ? where id = ?")
                .params(TODAY.plusDays(2), job.id())
                .update();
        past.calibrated();
        double below3 = jdbc.sql(
                        "select count(*) / 200.0 from running_forecast, unnest(unwidened) q where stage = 50 and q < 3")
                .query(Double.class)
                .single();
        Judged judged = calibrations
                .kept(calibrations.current().orElseThrow())
                .orElseThrow()
                .record()
                .get(4);
        assertThat(judged.atStages()).singleElement().satisfies(said -> {
            assertThat(said.percent()).isEqualTo(50);
            assertThat(said.actual()).isEqualTo(8);
            assertThat(said.probability()).as("three hours were left").isCloseTo(below3, within(0.003));
        });
        mvc.perform(get("/calibration").with(signedIn(ada)))
                .andExpect(content()
                        .string(containsString("With about half done: of 1 finished job with a forecast kept")));
        nextDay();
        assertThat(kept())
                .as("what is judged stays, and what was said last")
                .containsExactly("2026-11-25 50 5.0", "2026-11-26 0 6.0");
    }

    @Test
    void aReopenedJobIsComparedWithWhatWasSaidLastAndSaysThatItWasClosed() throws Exception {
        running();
        done(sanding, 300, TODAY);
        nextDay();
        past.logged(job, fitting, "direct", 60, TODAY.plusDays(1), ada);
        nextDay();
        jdbc.sql("update job set state = 'closed', closed_on = ? where id = ?")
                .params(TODAY.plusDays(2), job.id())
                .update();
        nextDay();
        jobDesk.reopen(job.id(), "a door rubs", ada.personId());
        assertThat(forecaster.kept(job.id(), TODAY.plusDays(30)).map(Forecaster.Kept::on))
                .as("not the marked one of an earlier stage")
                .contains(TODAY.plusDays(1));
        mvc.perform(get("/jobs/" + job.number() + "/forecast").with(signedIn(ada)))
                .andExpect(content().string(containsString("This job was closed and reopened.")));
    }

    @Test
    void aJobWithoutAnOpenTaskHasNoRange() throws Exception {
        running();
        done(sanding, 300, TODAY);
        mvc.perform(get("/jobs/" + job.number() + "/forecast").with(signedIn(ada)))
                .andExpect(content().string(containsString("P80")))
                .andExpect(content().string(not(containsString("All tasks are done"))));
        done(fitting, 120, TODAY);
        mvc.perform(get("/jobs/" + job.number() + "/forecast").with(signedIn(ada)))
                .andExpect(content().string(containsString("All tasks are done")))
                .andExpect(content().string(containsString("7 h")))
                .andExpect(content().string(not(containsString("P80"))));
        assertThat(stick.of(job.id())).isEmpty();
    }

    /** A task that nobody logged on is neither in the share done nor in the earned value. */
    @Test
    void aFinishedTaskWithoutHoursCountsNowhereAndIsNamed() throws Exception {
        running();
        UUID blank = jobs.task(job, null, past.fitting(), "5", ada);
        jdbc.sql("update task set state = 'done', done_on = ? where id = ?")
                .params(TODAY, blank)
                .update();
        done(sanding, 240, TODAY);
        Forecaster.Running now = forecaster.running(job.id(), TODAY).orElseThrow();
        assertThat(now.shareDone()).isCloseTo(4 / 7.0, within(1e-9));
        assertThat(now.earned().earned() / now.earned().budget()).isCloseTo(4 / 7.0, within(1e-9));
        assertThat(now.earned().index()).isEqualTo(1);
        assertThat(now.withoutHours()).isEqualTo(1);
        mvc.perform(get("/jobs/" + job.number() + "/forecast").with(signedIn(ada)))
                .andExpect(content().string(containsString("1 finished task has no hours logged and is left out")));
    }

    @Test
    void forecastsOfRunningJobsThatWereTooLowWidenAndMoveTheNextOnesOfThatStage() {
        running();
        done(sanding, 240, TODAY);
        nextDay();
        done(fitting, 900, TODAY.plusDays(1));
        past.logged(job, fitting, "direct", 900, TODAY.plusDays(2), ada);
        jdbc.sql("update job set state = 'closed', closed_on = ? where id = ?")
                .params(TODAY.plusDays(2), job.id())
                .update();
        past.calibrated();
        assertThat(shelf.fitted().model().record().factor(PastForecast.Stage.HALF_DONE))
                .isGreaterThan(1.1);
        assertThat(shelf.fitted().model().record().factor(PastForecast.Stage.QUARTER_DONE))
                .isEqualTo(1);
    }
}
