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

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.tallywright.AppTest;
import org.tallywright.calibration.SamplePast;
import org.tallywright.estimates.CostSaid;
import org.tallywright.estimates.EstimatePricer;
import org.tallywright.estimates.HoursSaid;
import org.tallywright.estimates.MoneyAtRisk;
import org.tallywright.estimates.PriceSum;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.estimates.WorkingSum;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
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
                .andExpect(redirectedUrl("/jobs/" + job.number() + "/estimate#price"));
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
        CostSaid cost = working.cost();
        assertThat(cost).isNotNull();
        PriceSum sum = working.sum().orElseThrow();
        assertThat(sum.labour())
                .isEqualTo(UnitPrice.of(Money.of("49.40")).times(said.total().mean()));
        assertThat(sum.costWithContingency()).isEqualTo(cost.under(80));
        assertThat(sum.contingency().amount()).isPositive();
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
                .andExpect(content().string(containsString("Price at it")))
                .andExpect(content().string(containsString("Loses money")))
                .andExpect(content().string(containsString("take it as a hint")));
        see(people.lead(), path)
                .andExpect(content().string(containsString("From 4 finished jobs")))
                .andExpect(content().string(not(containsString("Price at it"))))
                .andExpect(content().string(not(containsString("Loses money"))))
                .andExpect(content().string(not(containsString("profit"))))
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
        see(ada, "/bids/" + bid + "/sums").andExpect(content().string(containsString("Contingency, up to P90")));
    }

    /** The working estimate and the bid issued from it read the same, and the bid stays so when the shop learns more. */
    @Test
    void anIssuedBidShowsWhatTheEstimateShowedAndStaysSo() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 3, "1.2");
        JobRef job = estimates.windowSeat(ada);
        choose(job, ada, "80");
        String estimate = body(ada, "/jobs/" + job.number() + "/estimate");
        UUID bid = estimates.issued(job, ada);
        String issued = body(ada, "/bids/" + bid + "/sums");
        for (String rung : List.of(
                "Labour",
                "Material",
                "Overhead",
                "Expected cost",
                "Contingency, up to P80",
                "Margin",
                "Price",
                "Cost, 80 % range",
                "Expected profit",
                "Loses money")) {
            assertThat(rung(issued, rung))
                    .as(rung)
                    .isEqualTo(rung(estimate, rung))
                    .isNotEmpty();
        }
        past.job(ada, LocalDate.of(2026, 11, 2), "3");
        past.calibrated();
        choose(job, ada, "50");
        jdbc.sql("update material set starting_yield = 0.2").update();
        String rest = "<h2>Inside";
        assertThat(part(body(ada, "/bids/" + bid + "/sums"), rest)).isEqualTo(part(issued, rest));
    }

    private String body(SignedIn me, String path) throws Exception {
        return see(me, path).andReturn().getResponse().getContentAsString();
    }

    private static String part(String page, String from) {
        return page.substring(page.indexOf(from)).replaceAll("name=\"_csrf\" value=\"[^\"]*\"", "");
    }

    /** The figure beside a name in the ladder; where there are two, the first. */
    private static String rung(String page, String name) {
        Matcher found = Pattern.compile("<summary><span>" + Pattern.quote(name)
                        + "</span>\\s*<span class=\"rung-value\">([^<]*)</span>")
                .matcher(page);
        return found.find() ? found.group(1) : "";
    }

    @Test
    void aPriceAtTheMiddleLiesBelowOneAtP80AndLosesMoreOften() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 6, "1.1");
        JobRef job = estimates.windowSeat(ada);
        choose(job, ada, "50");
        WorkingSum middle = pricer.of(job.id());
        choose(job, ada, "90");
        WorkingSum careful = pricer.of(job.id());
        assertThat(middle.sum().orElseThrow().contingency().isNegative()).isTrue();
        assertThat(middle.sum().orElseThrow().price())
                .isLessThan(careful.sum().orElseThrow().price());
        assertThat(middle.risk().orElseThrow().loss())
                .isGreaterThan(careful.risk().orElseThrow().loss());
        assertThat(middle.risk().orElseThrow().expected())
                .isEqualTo(careful.risk().orElseThrow().expected());
    }

    /** Wages, prices and yields move the range of the cost, not the hours that a lead may see. */
    @Test
    void scatteredPricesWidenTheCost() {
        SignedIn ada = people.owner();
        past.jobs(ada, 3, "1");
        JobRef job = estimates.windowSeat(ada);
        MoneyAtRisk calm = pricer.of(job.id()).risk().orElseThrow();
        UUID oak = jdbc.sql("select id from material where code = 'white_oak'")
                .query(UUID.class)
                .single();
        String[] paid = {"9", "17", "8.5", "18", "9", "17.5", "10", "19"};
        for (int n = 0; n < paid.length; n++) {
            bought(oak, paid[n], LocalDate.of(2026, 2, 1).plusDays(n), ada);
        }
        past.job(ada, LocalDate.of(2026, 11, 2), "1");
        past.calibrated();
        MoneyAtRisk wild = pricer.of(job.id()).risk().orElseThrow();
        assertThat(wild.behind().priceSteps()).isEqualTo(7);
        assertThat(wild.high().minus(wild.low()))
                .isGreaterThan(calm.high().minus(calm.low()).times(new BigDecimal("1.3")));
    }

    private void bought(UUID material, String price, LocalDate on, SignedIn by) {
        people.asShop(() -> jdbc.sql("""
                        insert into purchase (id, material_id, quantity, unit_price, amount, bought_on, bought_by, version)
                        values (?, ?, 10, ?, ?, ?, ?, 0)""")
                .params(
                        Ids.next(),
                        material,
                        new BigDecimal(price),
                        new BigDecimal(price).multiply(BigDecimal.TEN),
                        on,
                        by.personId())
                .update());
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
