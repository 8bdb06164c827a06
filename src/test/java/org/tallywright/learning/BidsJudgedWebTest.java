package org.tallywright.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.tallywright.AppTest;
import org.tallywright.calibration.Forecaster;
import org.tallywright.calibration.SamplePast;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.OptionDesk;
import org.tallywright.estimates.OptionDraft;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

/** What a bid said on its day is judged when the job is done, whatever would be said of it today. */
@AppTest
class BidsJudgedWebTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePast past;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleEstimates estimates;

    @Autowired
    SampleJobs jobs;

    @Autowired
    Bids bids;

    @Autowired
    OptionDesk options;

    @Autowired
    Forecaster forecaster;

    @Autowired
    JdbcClient jdbc;

    private SignedIn ada;
    private JobRef job;

    private ResultActions record() throws Exception {
        return mvc.perform(get("/calibration").with(signedIn(ada)));
    }

    private void sold() {
        ada = people.owner();
        past.jobs(ada, 3, "1.2");
        job = estimates.windowSeat(ada);
        bids.accept(estimates.issued(job, ada), "Ida Marl", TODAY, Set.of(), ada.personId());
    }

    private double kept(int quantile) {
        return jdbc.sql(
                        "select f.hours[?] from bid_forecast f join bid b on b.id = f.bid_id where f.job_id = ? and b.kind = 'bid'")
                .params(quantile, job.id())
                .query(Double.class)
                .single();
    }

    /** Ten hours a day, the last one today. */
    private void logged(UUID task, int minutes) {
        LocalDate day = TODAY;
        for (int left = minutes; left > 0; left -= 600) {
            past.logged(job, task, "direct", Math.min(600, left), day, ada);
            day = day.minusDays(1);
        }
    }

    private void closedAfter(double hours) {
        UUID task = jdbc.sql("select id from task where job_id = ? order by position limit 1")
                .param(job.id())
                .query(UUID.class)
                .single();
        logged(task, (int) (60 * hours));
        jdbc.sql("update task set state = 'done', done_on = ? where job_id = ?")
                .params(TODAY, job.id())
                .update();
        jdbc.sql("update job set state = 'closed', closed_on = ? where id = ?")
                .params(TODAY, job.id())
                .update();
        past.calibrated();
    }

    @Test
    void aBidIsJudgedByWhatWasKeptOnItsDay() throws Exception {
        sold();
        jdbc.sql("update task_kind set unit_hours = unit_hours * 9").update();
        closedAfter(kept(120));
        record().andExpect(content()
                        .string(containsString("Of 1 finished job with a forecast kept from its bid, 1 ended inside the"
                                + " range we gave.")))
                .andExpect(content()
                        .string(containsString("3 finished jobs besides were brought in from a file, bid before")))
                .andExpect(content().string(containsString("Of 4 finished jobs, ")));
    }

    @Test
    void hoursOfALaterChangeOrderAreNotTheBids() throws Exception {
        sold();
        UUID extra = jobs.task(job, null, past.fitting(), "40", ada);
        bids.accept(estimates.issued(job, ada), "Ida Marl", TODAY, Set.of(), ada.personId());
        logged(extra, 24000);
        closedAfter(kept(120));
        record().andExpect(content().string(containsString("1 ended inside the range we gave.")));
    }

    /** The option is 40 h to the bid's 6 h 30: judged by the bid alone, its hours would be far outside or out of sight. */
    @Test
    void optionsThatWereTakenAreSaidAndJudgedWithTheBid() throws Exception {
        ada = people.owner();
        past.jobs(ada, 3, "1.2");
        job = estimates.windowSeat(ada);
        UUID extra = jobs.task(job, null, past.fitting(), "40", ada);
        options.save(job.id(), new OptionDraft(Ids.next(), null, "Wall", "", "", Set.of(extra)), ada.personId());
        UUID bid = estimates.issued(job, ada);
        UUID option = bids.paper(bid).options().get(0).id();
        bids.accept(bid, "Ida Marl", TODAY, Set.of(option), ada.personId());

        double agreed = jdbc.sql("select hours[120] from agreed_forecast where bid_id = ?")
                .param(bid)
                .query(Double.class)
                .single();
        assertThat(agreed).isGreaterThan(2 * kept(120));
        logged(extra, (int) (60 * (agreed - kept(120))));
        closedAfter(kept(120));
        record().andExpect(content().string(containsString("1 ended inside the range we gave.")));
        assertThat(jdbc.sql("""
                        select (j -> 'atBid' ->> 'actual')::float8 from calibration, jsonb_array_elements(record) j
                        where current and jsonb_typeof(j -> 'atBid') = 'object'""").query(Double.class).single()).isCloseTo(agreed, within(0.1));
    }

    /** What was agreed is frozen in the bid; another quantity in the plan would be another forecast. */
    @Test
    void keepsNoForecastOfLinesThatWereChangedAfterTheIssue() throws Exception {
        ada = people.owner();
        past.jobs(ada, 3, "1.2");
        job = estimates.windowSeat(ada);
        UUID extra = jobs.task(job, null, past.fitting(), "40", ada);
        options.save(job.id(), new OptionDraft(Ids.next(), null, "Wall", "", "", Set.of(extra)), ada.personId());
        UUID bid = estimates.issued(job, ada);
        UUID option = bids.paper(bid).options().get(0).id();
        jdbc.sql("update task set quantity = quantity * 2 where job_id = ?")
                .param(job.id())
                .update();

        bids.accept(bid, "Ida Marl", TODAY, Set.of(option), ada.personId());

        assertThat(jdbc.sql("select count(*) from agreed_forecast")
                        .query(Integer.class)
                        .single())
                .isZero();
    }

    @Test
    void withoutOptionsTheForecastOfTheBidIsTheOneThatCounts() {
        sold();
        assertThat(jdbc.sql("select count(*) from agreed_forecast")
                        .query(Integer.class)
                        .single())
                .isZero();
    }

    @Test
    void aBidThatWasFarOffWidensTheNextOnes() throws Exception {
        sold();
        closedAfter(3 * kept(200));
        record().andExpect(content().string(containsString("0 ended inside the range we gave.")))
                .andExpect(content()
                        .string(containsString(
                                "new ranges are made wider: one like that of the middle job becomes about")));
        assertThat(jdbc.sql("select record::text from calibration where current")
                        .query(String.class)
                        .single())
                .contains("\"atBid\": {");
    }

    /** One of three tasks is not done after all: the bid is taken less its share, and the page says so. */
    @Test
    void aBidDoesNotAnswerForTasksDroppedAfterwards() throws Exception {
        sold();
        double all = kept(120);
        UUID gone = jdbc.sql("select id from task where job_id = ? order by position desc limit 1")
                .param(job.id())
                .query(UUID.class)
                .single();
        double share = jdbc.sql("""
                        select (sum(t.quantity * t.starting_unit_hours) filter (where t.task_id = :gone)
                            / sum(t.quantity * t.starting_unit_hours))::float8
                        from bid_task t join bid b on b.id = t.bid_id where b.job_id = :job""")
                .param("gone", gone)
                .param("job", job.id())
                .query(Double.class)
                .single();
        past.logged(job, gone, "direct", 30, TODAY, ada);
        closedAfter(all * (1 - share));
        jdbc.sql("update task set state = 'dropped', done_on = null where id = ?")
                .param(gone)
                .update();
        past.calibrated();
        AtBidRow said = jdbc.sql("""
                        select (j -> 'atBid' ->> 'probability')::float8 as probability, (j -> 'atBid' ->> 'actual')::float8 as actual,
                               (j -> 'atBid' -> 'dropped' ->> 'share')::float8 as share
                        from calibration, jsonb_array_elements(record) j where current and jsonb_typeof(j -> 'atBid') = 'object'""").query(AtBidRow.class).single();
        assertThat(said.actual()).as("without the half hour on it").isCloseTo(all * (1 - share), within(0.02));
        assertThat(said.share()).isCloseTo(share, within(1e-6));
        assertThat(said.probability()).isCloseTo(0.6, within(0.02));
        record().andExpect(content()
                .string(containsString(
                        "without 1 task dropped since, " + Math.round(100 * share) + " % of its hours")));
    }

    record AtBidRow(double probability, double actual, double share) {}

    @Test
    void aBidWithoutTasksSaysNothingOfHours() {
        sold();
        UUID bid = jdbc.sql("delete from bid_forecast returning bid_id")
                .query(UUID.class)
                .single();
        forecaster.keep(bid, job.id(), null, List.of());
        assertThat(jdbc.sql("select count(*) from bid_forecast")
                        .query(Integer.class)
                        .single())
                .isZero();
    }
}
