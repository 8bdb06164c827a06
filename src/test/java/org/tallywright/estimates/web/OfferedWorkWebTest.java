package org.tallywright.estimates.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.calibration.Forecaster;
import org.tallywright.costing.CostSums;
import org.tallywright.costing.JobCosts;
import org.tallywright.costing.JobFigures;
import org.tallywright.costing.MaterialFigures;
import org.tallywright.costing.TaskFigures;
import org.tallywright.estimates.BidDesk;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.ClientYes;
import org.tallywright.estimates.EstimatePricer;
import org.tallywright.estimates.OptionDesk;
import org.tallywright.estimates.OptionDraft;
import org.tallywright.estimates.PriceSum;
import org.tallywright.estimates.Refusal;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Money;
import org.tallywright.web.SignedIn;

/** A seat of 6 h 30, and a drawer of 3 h that is no part of the plan until the client agrees to it. */
@AppTest
class OfferedWorkWebTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SampleEstimates sample;

    @Autowired
    OptionDesk options;

    @Autowired
    EstimatePricer pricer;

    @Autowired
    BidDesk desk;

    @Autowired
    Bids bids;

    @Autowired
    JobCosts costs;

    @Autowired
    Forecaster forecaster;

    @Autowired
    TestClock clock;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;
    JobRef job;
    UUID drawer;
    UUID option;

    @BeforeEach
    void seat() {
        ada = people.owner();
        job = sample.windowSeat(ada);
    }

    private void addDrawer() {
        drawer = jobs.task(job, null, jobs.kind("drawer", "Build a drawer", "Build", "each", "3"), "1", ada);
        people.asShop(() -> jdbc.sql("update task set assigned_to = ? where id = ?")
                .params(ada.personId(), drawer)
                .update());
    }

    private void drawerAsOption() {
        addDrawer();
        UUID maple = sample.material(job, null, sample.material("maple", "Maple", "bf", "0.5", "9"), "4", ada);
        UUID slides = sample.other(job, "Slides", "35.00", ada);
        option = Ids.next();
        options.save(
                job.id(),
                new OptionDraft(option, null, "Drawer", "", "", Set.of(drawer, maple, slides)),
                ada.personId());
    }

    @Test
    void anOptionIsNoPartOfThePlanWhileTheBidIsOut() throws Exception {
        drawerAsOption();
        isPlannedWithoutTheDrawer();
        sample.issued(job, ada);
        isPlannedWithoutTheDrawer();

        JobFigures figures = costs.figures(job.id());
        PriceSum base = pricer.of(job.id()).sum().orElseThrow();
        CostSums planned = Objects.requireNonNull(figures.planned());
        assertThat(Money.of(planned.cost())).isEqualTo(base.cost());
        assertThat(figures.materials()).extracting(MaterialFigures::name).containsExactly("White oak, rough");
        assertThat(figures.others()).extracting(JobFigures.Other::name).containsExactly("Delivery");
        assertThat(owner("/jobs/" + job.number() + "/tasks/" + drawer))
                .contains("Not agreed")
                .contains("Put it into the plan all the same");
    }

    @Test
    void anOptionThatWasTakenIsPlannedAndOneThatWasNotIsNot() throws Exception {
        drawerAsOption();
        UUID bid = sample.issued(job, ada);
        bids.acceptByLink(bid, job.id(), new ClientYes("Orrin", Set.of(paperOption(bid)), ""));
        isPlannedWithTheDrawer();
        assertThat(costs.figures(job.id()).materials())
                .extracting(MaterialFigures::name)
                .containsExactlyInAnyOrder("White oak, rough", "Maple");
        assertThat(history()).containsExactly("|planned|", "planned|offered|in the option Drawer", agreedAs("A.1"));
    }

    @Test
    void anOptionThatWasNotTakenCountsNowhere() throws Exception {
        drawerAsOption();
        bids.acceptByLink(sample.issued(job, ada), job.id(), new ClientYes("Orrin", Set.of(), ""));
        isPlannedWithoutTheDrawer();
        assertThat(costs.figures(job.id()).materials())
                .extracting(MaterialFigures::name)
                .containsExactly("White oak, rough");
        String lead = Jsoup.parse(get("/jobs/" + job.number() + "/estimate", people.lead()))
                .text();
        assertThat(lead).contains("White oak").doesNotContain("Maple").doesNotContain("drawer");
    }

    @Test
    void anOptionThatWasNotTakenIsOfferedAgainAtTodaysPrices() throws Exception {
        drawerAsOption();
        bids.acceptByLink(sample.issued(job, ada), job.id(), new ClientYes("Orrin", Set.of(), ""));
        String again = "/jobs/" + job.number() + "/estimate/options/" + option + "/offer";
        assertThat(Jsoup.parse(get("/jobs/" + job.number() + "/estimate", ada)).select("form[action='" + again + "']"))
                .hasSize(1);
        clock.advance(Duration.ofDays(40));
        people.asShop(() -> jdbc.sql("insert into material_price (material_id, from_date, unit_price)"
                        + " select id, date '2026-12-20', 11 from material where name = 'Maple'")
                .update());
        people.paid(ada, LocalDate.of(2027, 1, 1), "50", "20");

        for (int time = 0; time < 2; time++) { // a double tap does it once
            mvc.perform(post(again).with(signedIn(ada)).with(csrf()))
                    .andExpect(redirectedUrl("/jobs/" + job.number() + "/bids/new?about=Drawer"));
        }
        isPlannedWithoutTheDrawer();
        // (3 h x 60.00 + 8 bf at 11 + 35 + 3 x 15) / 0.85 = 409.41, to the nearest 10.
        assertThat(pricer.of(job.id()).sum().orElseThrow().price()).isEqualTo(Money.of("410.00"));
        String form = get("/jobs/" + job.number() + "/bids/new?about=Drawer", ada);
        assertThat(Jsoup.parse(form).select("[name=title]").val()).isEqualTo("Drawer");
        assertThat(owner("/jobs/" + job.number() + "/estimate"))
                .contains("they were offered again")
                .doesNotContain("Offer it again");

        bids.acceptByLink(change(), job.id(), new ClientYes("Orrin", Set.of(), ""));
        isPlannedWithTheDrawer();
        assertThat(history()).endsWith("dropped|offered|Drawer is offered again", agreedAs("CO-1"));
    }

    @Test
    void aPriceTypedByHandStaysWhenItIsOfferedAgain() throws Exception {
        drawerAsOption();
        people.asShop(() -> jdbc.sql(
                        "update estimate_material set unit_price = 7, price_typed = true, amount = 56 where unit_price = 9")
                .update());
        bids.acceptByLink(sample.issued(job, ada), job.id(), new ClientYes("Orrin", Set.of(), ""));
        mvc.perform(post("/jobs/" + job.number() + "/estimate/options/" + option + "/offer")
                        .with(signedIn(ada))
                        .with(csrf()))
                .andExpect(status().is3xxRedirection());
        assertThat(pricer.sheet(job.id()).next().material()).isEqualTo(Money.of("56.00"));
    }

    @Test
    void onlyWhatTheClientLeftOutIsOfferedAgain() throws Exception {
        drawerAsOption();
        String again = "/jobs/" + job.number() + "/estimate/options/" + option + "/offer";
        mvc.perform(post(again).with(signedIn(ada)).with(csrf())).andExpect(status().isUnprocessableContent());
        UUID bid = sample.issued(job, ada);
        bids.acceptByLink(bid, job.id(), new ClientYes("Orrin", Set.of(paperOption(bid)), ""));
        mvc.perform(post(again).with(signedIn(ada)).with(csrf())).andExpect(status().isUnprocessableContent());
        mvc.perform(post(again.replace(option.toString(), UUID.randomUUID().toString()))
                        .with(signedIn(ada))
                        .with(csrf()))
                .andExpect(status().isNotFound());
        mvc.perform(post(again).with(signedIn(people.lead())).with(csrf())).andExpect(status().isForbidden());
    }

    @Test
    void aLineThatLeavesItsOptionIsPlannedAgain() throws Exception {
        drawerAsOption();
        options.save(job.id(), new OptionDraft(option, 0, "Drawer", "", "", Set.of()), ada.personId());
        isPlannedWithTheDrawer();
        options.save(job.id(), new OptionDraft(option, 1, "Drawer", "", "", Set.of(drawer)), ada.personId());
        isPlannedWithoutTheDrawer();
        options.remove(job.id(), option, ada.personId());
        isPlannedWithTheDrawer();
    }

    @Test
    void aChangeLeavesThePlanUntilItIsAcceptedHoweverItEnds() throws Exception {
        UUID first = sample.issued(job, ada);
        bids.acceptByLink(first, job.id(), new ClientYes("Orrin", Set.of(), ""));
        addDrawer();
        isPlannedWithTheDrawer();

        UUID declined = change();
        isPlannedWithoutTheDrawer();
        bids.declineByLink(declined, job.id(), new Refusal("price", ""), "");
        isPlannedWithoutTheDrawer();

        UUID withdrawn = change();
        desk.withdraw(withdrawn, ada.personId());
        isPlannedWithoutTheDrawer();

        change();
        clock.advance(Duration.ofDays(31));
        isPlannedWithoutTheDrawer();

        UUID last = change();
        bids.acceptByLink(last, job.id(), new ClientYes("Orrin", Set.of(), ""));
        isPlannedWithTheDrawer();
        assertThat(history())
                .containsExactly("|planned|", "planned|offered|in " + job.number() + " CO-1", agreedAs("CO-4"));
    }

    @Test
    void workThatWasBegunStaysAndTheFirstHourBringsTheOtherIn() throws Exception {
        bids.acceptByLink(sample.issued(job, ada), job.id(), new ClientYes("Orrin", Set.of(), ""));
        addDrawer();
        change();
        mvc.perform(post("/jobs/" + job.number() + "/tasks/" + drawer + "/start")
                        .with(signedIn(ada))
                        .with(csrf()))
                .andExpect(status().is3xxRedirection());
        isPlannedWithTheDrawer();
        desk.withdraw(bidsOfJob().get(1), ada.personId());
        change();
        isPlannedWithTheDrawer();
    }

    @Test
    void isPutIntoThePlanByHand() throws Exception {
        drawerAsOption();
        String task = "/jobs/" + job.number() + "/tasks/" + drawer;
        mvc.perform(post(task + "/reopening").with(signedIn(people.lead())).with(csrf()))
                .andExpect(redirectedUrl(task));
        isPlannedWithTheDrawer();
        assertThat(history()).last().isEqualTo("offered|planned|before the client agreed");
    }

    private void isPlannedWithoutTheDrawer() throws Exception {
        isPlanned("6 h 30", false);
    }

    private void isPlannedWithTheDrawer() throws Exception {
        isPlanned("9 h 30", true);
    }

    /** Story stick, list of jobs, planned costs, forecast, what is next and today. */
    private void isPlanned(String hours, boolean drawn) throws Exception {
        String other = hours.equals("9 h 30") ? "of 6 h 30" : "of 9 h 30";
        for (String path : List.of("/jobs/" + job.number(), "/jobs?state=all")) {
            assertThat(owner(path)).contains("of " + hours).doesNotContain(other);
        }
        assertThat(Jsoup.parse(get("/jobs/" + job.number(), ada))
                        .select("section:has(h2:contains(Next)) .task-name")
                        .eachText()
                        .contains("Build a drawer"))
                .isEqualTo(drawn);
        assertThat(owner("/").contains("Build a drawer")).isEqualTo(drawn);
        JobFigures figures = costs.figures(job.id());
        assertThat(figures.tasks().stream().map(TaskFigures::name).anyMatch("Build a drawer"::equals))
                .isEqualTo(drawn);
        assertThat(forecaster
                        .running(job.id(), TODAY.plusDays(60))
                        .orElseThrow()
                        .tasks()
                        .containsKey(drawer))
                .isEqualTo(drawn);
    }

    private UUID change() {
        clock.advance(Duration.ofMinutes(5));
        return sample.issued(job, ada);
    }

    private UUID paperOption(UUID bid) {
        return bids.paper(bid).options().get(0).id();
    }

    private List<UUID> bidsOfJob() {
        return sample.bidsOf(job);
    }

    private String agreedAs(String mark) {
        return "offered|planned|" + job.number() + " " + mark + " was accepted";
    }

    private List<String> history() {
        return jdbc.sql(
                        "select from_state || '|' || to_state || '|' || note from job_event where task_id = ? order by at, id")
                .param(drawer)
                .query(String.class)
                .list();
    }

    private String owner(String path) throws Exception {
        return Jsoup.parse(get(path, ada)).text();
    }

    private String get(String path, SignedIn who) throws Exception {
        return mvc.perform(org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get(path)
                        .with(signedIn(who)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }
}
