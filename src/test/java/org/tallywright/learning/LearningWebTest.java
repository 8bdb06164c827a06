package org.tallywright.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.LocalDate;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.tallywright.AppTest;
import org.tallywright.calibration.SamplePast;
import org.tallywright.estimates.EstimatePricer;
import org.tallywright.estimates.HoursSaid;
import org.tallywright.estimates.PriceSum;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.estimates.WorkingSum;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Money;
import org.tallywright.shared.UnitPrice;
import org.tallywright.web.SignedIn;

@AppTest
class LearningWebTest {
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
    EstimatePricer pricer;

    @Autowired
    JdbcClient jdbc;

    private ResultActions see(SignedIn me, String path) throws Exception {
        return mvc.perform(get(path).with(signedIn(me)));
    }

    private void choose(JobRef job, SignedIn me, String percent) throws Exception {
        mvc.perform(post("/jobs/" + job.number() + "/estimate/confidence")
                        .param("percent", percent)
                        .with(csrf())
                        .with(signedIn(me)))
                .andExpect(redirectedUrl("/jobs/" + job.number() + "/estimate#outlook"));
    }

    @Test
    void thePriceFollowsTheChosenConfidence() throws Exception {
        SignedIn ada = people.owner();
        JobRef job = estimates.windowSeat(ada);
        Money named = pricer.of(job.id()).sum().orElseThrow().contingency();
        choose(job, ada, "80");
        WorkingSum working = pricer.of(job.id());
        HoursSaid said = working.said();
        assertThat(said).isNotNull();
        PriceSum sum = working.sum().orElseThrow();
        Money hourly = Money.of("49.40").plus(working.rates().overheadRate());
        Money more = UnitPrice.of(hourly)
                .times(said.total().p80().minus(working.sheet().hours()));
        assertThat(sum.contingency().minus(more).amount().abs())
                .isLessThanOrEqualTo(Money.of("0.02").amount());
        assertThat(sum.contingency()).isNotEqualTo(named);
        choose(job, ada, "0");
        assertThat(pricer.of(job.id()).sum().orElseThrow().contingency()).isEqualTo(named);
    }

    @Test
    void showsLinesAndTotalToOwnerAndLeadButNoPriceToTheLead() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 4, "1.2");
        JobRef job = estimates.windowSeat(ada);
        String path = "/jobs/" + job.number() + "/estimate";
        see(ada, path)
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("From 4 finished jobs")))
                .andExpect(content().string(containsString("P80, four times in five under")))
                .andExpect(content().string(containsString("Price at it")));
        see(people.lead(), path)
                .andExpect(content().string(containsString("From 4 finished jobs")))
                .andExpect(content().string(not(containsString("Price at it"))))
                .andExpect(content().string(not(containsString("49.40"))));
    }

    @Test
    void anIssuedBidKeepsItsForecastSeedAndCalibration() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 3, "1.2");
        JobRef job = estimates.windowSeat(ada);
        choose(job, ada, "90");
        UUID bid = estimates.issued(job, ada);
        String kept = jdbc.sql("""
                        select concat_ws(' ', calibration_id = (select id from calibration where current), seed > 0, confidence,
                            cardinality(hours), hours[20] < hours[180]) from bid_forecast where bid_id = ?""").param(bid).query(String.class).single();
        assertThat(kept).isEqualTo("t t 90 200 t");
        see(ada, "/bids/" + bid + "/sums").andExpect(content().string(containsString("P90, up to")));
    }

    @Test
    void saysWhereARunningJobEndsAndWhatMovedIt() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 4, "1");
        JobRef job = jobs.running(ada, "Bookcase");
        UUID first = jobs.task(job, null, past.sanding(), "40", ada);
        jobs.task(job, null, past.fitting(), "3", ada);
        past.logged(job, first, "direct", 60, LocalDate.of(2026, 11, 16), ada);
        past.logged(job, first, "direct", 600, LocalDate.of(2026, 11, 23), ada);
        jdbc.sql("update task set state = 'done', done_on = date '2026-11-23' where id = ?")
                .param(first)
                .update();
        String path = "/jobs/" + job.number() + "/forecast";
        see(people.lead(), path)
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("Sand to 150, finished")))
                .andExpect(content().string(containsString("A week ago the likely end was")))
                .andExpect(content().string(containsString("0.36")))
                .andExpect(content().string(containsString("mostly noise yet")));
        see(ada, "/jobs/" + job.number())
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("four times in five between")));
        see(people.helper(), path).andExpect(status().isForbidden());
        see(people.helper(), "/jobs/" + job.number())
                .andExpect(content().string(not(containsString("four times in five"))));
    }

    @Test
    void aJobThatDoesNotRunHasNoForecast() throws Exception {
        SignedIn ada = people.owner();
        JobRef job = estimates.windowSeat(ada);
        see(ada, "/jobs/" + job.number() + "/forecast")
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("A running job has a forecast")));
    }
}
