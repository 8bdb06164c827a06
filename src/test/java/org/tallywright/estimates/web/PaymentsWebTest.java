package org.tallywright.estimates.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.util.Set;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.ClientYes;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobRef;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

/** How a bid is paid, the limit of its first payment, and the allowances that its price holds. */
@AppTest
class PaymentsWebTest {
    private static final String PLAN = "40 % to book\n40 % at delivery\nrest when done";

    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleEstimates sample;

    @Autowired
    Bids bids;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;
    JobRef job;

    @BeforeEach
    void bid() {
        ada = people.owner();
        // An estimate starts from the shop's plan when its first line is written.
        shop("bid_payments = '" + PLAN + "'");
        job = sample.windowSeat(ada);
    }

    @Test
    void standOnThePaperInMoneyAndStayAfterTheShopsPlanHasChanged() throws Exception {
        Document form = page(get("/jobs/" + job.number() + "/bids/new"), 200);
        assertThat(form.select("textarea[name=payments]").text()).contains("40 % to book");
        UUID bid = Ids.next();
        ask(issue(form, bid)).andExpect(status().isFound());
        shop("bid_payments = 'rest now'");

        Document paper = page(get("/bids/" + bid), 200);
        assertThat(paper.select("table:has(caption:contains(Payments)) tr").eachText())
                .containsExactly("To book, 40 % $504.00", "At delivery, 40 % $504.00", "When done $252.00");
    }

    @Test
    void aPlanThatDoesNotComeToTheWholeIsRefusedBesideItsBox() throws Exception {
        Document form = page(get("/jobs/" + job.number() + "/bids/new"), 200);
        UUID bid = Ids.next();
        Document refused = page(issue(form, bid, "40 % to book"), 422);

        assertThat(refused.select("#payments-error").text()).contains("make it 100");
        assertThat(refused.select("textarea[name=payments]").text()).isEqualTo("40 % to book");
        assertThat(sample.bidsOf(job)).isEmpty();
    }

    @Test
    void aFirstPaymentOverTheShopsLimitIsIssuedOnlyByWhoKnowsIt() throws Exception {
        shop("deposit_limit_percent = 10, deposit_limit_amount = 1000," + " deposit_limit_place = 'California'");
        Document form = page(get("/jobs/" + job.number() + "/bids/new"), 200);
        assertThat(form.select(".note").text())
                .contains(
                        "The first payment, $504.00, is over the limit that you set under Shop for California, $126.00")
                .contains("Local law decides");
        UUID bid = Ids.next();
        Document refused = page(issue(form, bid), 422);
        assertThat(refused.select("#overLimit-error").text()).isNotBlank();
        assertThat(sample.bidsOf(job)).isEmpty();

        ask(issue(form, bid).param("overLimit", "true")).andExpect(status().isFound());
        assertThat(sample.bidsOf(job)).containsExactly(bid);
    }

    @Test
    void stepsAreShownInMoneyBeforeAnythingIsIssued() throws Exception {
        Document form = page(get("/jobs/" + job.number() + "/bids/new"), 200);
        assertThat(form.select("#steps tr").eachText())
                .contains("To book, 40 % $504.00", "At delivery, 40 % $504.00", "When done $252.00", "Total $1,260.00");

        Document thirds = page(looked(form, "33.3 % to book\n33.3 % at delivery\n33.4 % when done"), 200);
        assertThat(thirds.select("#steps tbody tr").eachText())
                .containsExactly("To book, 33.3 % $419.58", "At delivery, 33.3 % $419.58", "When done, 33.4 % $420.84");
        assertThat(thirds.select("textarea[name=payments]").text()).startsWith("33.3 % to book");
        assertThat(thirds.select("textarea[name=scope]").text()).isEqualTo("One window seat");

        Document unclear = page(looked(form, "40 % to book"), 422);
        assertThat(unclear.select("#payments-error").text()).contains("make it 100");
        assertThat(unclear.select("#steps tr")).isEmpty();
        assertThat(page(looked(form, "$5,000 to book\nrest"), 422)
                        .select("#steps .note")
                        .text())
                .isNotBlank();
        assertThat(sample.bidsOf(job)).isEmpty();
    }

    private MockHttpServletRequestBuilder looked(Document form, String payments) {
        MockHttpServletRequestBuilder post = post("/jobs/" + job.number() + "/bids/preview");
        for (String name : new String[] {"id", "version", "seen", "title", "validDays"}) {
            post.param(name, form.select("form input[name=" + name + "]").val());
        }
        return post.param("scope", "One window seat").param("payments", payments);
    }

    @Test
    void aSinglePaymentBeforeTheWorkIsHeldToTheLimitToo() throws Exception {
        shop("deposit_limit_percent = 10");
        Document form = page(get("/jobs/" + job.number() + "/bids/new"), 200);
        Document refused = page(issue(form, Ids.next(), "100 % to book"), 422);
        assertThat(refused.select(".note").text())
                .contains("All of it before the work, $1,260.00, is over the limit", "Local law decides");
        ask(issue(form, Ids.next(), "rest when done")).andExpect(status().isFound());
    }

    @Test
    void aChangeIsHeldToTheLimitOfItsOwnTotal() throws Exception {
        bids.acceptByLink(sample.issued(job, ada), job.id(), new ClientYes("Orrin", Set.of(), ""));
        sample.other(job, "Hired lift", "340.00", ada);
        shop("deposit_limit_percent = 10");
        Document form = page(get("/jobs/" + job.number() + "/bids/new"), 200);
        Document refused = page(issue(form, Ids.next(), "50 % to book\nrest").param("title", "Lift"), 422);
        assertThat(refused.select(".note").text())
                .contains("The first payment, $200.00, is over the limit", "$40.00 of this total", "It is a change");
    }

    @Test
    void withinTheLimitNothingIsSaid() throws Exception {
        shop("deposit_limit_percent = 40");
        Document form = page(get("/jobs/" + job.number() + "/bids/new"), 200);
        assertThat(form.select("[name=overLimit]")).isEmpty();
        ask(issue(form, Ids.next())).andExpect(status().isFound());
    }

    @Test
    void anAllowanceIsReadByTheClientAndOtherCostsAreNot() throws Exception {
        ask(post("/jobs/" + job.number() + "/estimate/others")
                        .param("id", Ids.next().toString())
                        .param("sort", "allowance")
                        .param("description", "Pulls and hinges")
                        .param("amount", "400"))
                .andExpect(status().isFound());
        assertThat(page(get("/jobs/" + job.number() + "/estimate"), 200)
                        .select("#others")
                        .text())
                .contains("Pulls and hinges Allowance");
        Document form = page(get("/jobs/" + job.number() + "/bids/new"), 200);
        UUID bid = Ids.next();
        ask(issue(form, bid)).andExpect(status().isFound());

        Document paper = page(get("/bids/" + bid), 200);
        assertThat(paper.select("table:has(caption:contains(Allowances)) tr").eachText())
                .as("400 / (1 - 15 %), so that nobody reads the margin from it")
                .containsExactly("Pulls and hinges $470.59");
        assertThat(paper.text()).doesNotContain("45.50");
        assertThat(jdbc.sql("select sort from bid_other where bid_id = ? order by amount")
                        .param(bid)
                        .query(String.class)
                        .list())
                .containsExactly("other", "allowance");
    }

    @Test
    void aCostBelowNothingIsAnsweredInWords() throws Exception {
        Document refused = page(
                post("/jobs/" + job.number() + "/estimate/others")
                        .param("id", Ids.next().toString())
                        .param("sort", "other")
                        .param("description", "Discount")
                        .param("amount", "-5000"),
                422);
        assertThat(refused.select("#amount-error").text()).isNotBlank();
        assertThat(refused.select("input[name=amount]").val()).isEqualTo("-5000");
    }

    @Test
    void anUnknownSortIsRefused() throws Exception {
        Document refused = page(
                post("/jobs/" + job.number() + "/estimate/others")
                        .param("id", Ids.next().toString())
                        .param("sort", "bribe")
                        .param("description", "Inspector")
                        .param("amount", "400"),
                422);
        assertThat(refused.select("#sort-error").text()).isEqualTo("Choose one of the list.");
        assertThat(refused.select("input[name=description]").val()).isEqualTo("Inspector");
    }

    private void shop(String set) {
        people.asShop(() -> jdbc.sql("update shop set " + set).update());
    }

    /** The form as the page made it. */
    private MockHttpServletRequestBuilder issue(Document form, UUID id) {
        return issue(form, id, form.select("textarea[name=payments]").first().wholeText());
    }

    private MockHttpServletRequestBuilder issue(Document form, UUID id, String payments) {
        MockHttpServletRequestBuilder post =
                post("/jobs/" + job.number() + "/bids").param("id", id.toString());
        for (String name : new String[] {"version", "seen", "title", "validDays"}) {
            post.param(name, form.select("form input[name=" + name + "]").val());
        }
        return post.param("scope", "One window seat")
                .param("exclusions", "")
                .param("payments", payments)
                .param("terms", "");
    }

    private Document page(MockHttpServletRequestBuilder request, int expected) throws Exception {
        return Jsoup.parse(ask(request)
                .andExpect(status().is(expected))
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private ResultActions ask(MockHttpServletRequestBuilder request) throws Exception {
        return mvc.perform(request.with(signedIn(ada)).with(csrf()));
    }
}
