package org.tallywright.estimates.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.Duration;
import java.util.Set;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.ClientYes;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.sharing.ClientLinks;
import org.tallywright.web.SignedIn;

/** A change from the form to the budget: hours, material, price and days, wherever the job shows them. */
@AppTest
class ChangeOrderWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SampleEstimates sample;

    @Autowired
    Bids bids;

    @Autowired
    JobDesk desk;

    @Autowired
    ClientLinks links;

    @Autowired
    TestClock clock;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;
    JobRef job;
    UUID first;
    String token;

    /** The seat is sold for 1,260.00 and promised for Friday 11 December; a drawer is to be added. */
    @BeforeEach
    void soldJob() {
        ada = people.owner();
        job = sample.windowSeat(ada);
        people.asShop(
                () -> jdbc.sql("update job set promised_on = date '2026-12-11'").update());
        first = sample.issued(job, ada);
        token = links.make(job.id(), "Orrin", 90, ada.personId());
        bids.acceptByLink(first, job.id(), new ClientYes("Orrin Baskwell", Set.of(), ""));
        clock.advance(Duration.ofHours(2));
        jobs.task(job, null, jobs.kind("drawer", "Build a drawer", "Build", "each", "3"), "1", ada);
        sample.material(job, null, sample.material("maple", "Maple", "bf", "0.5", "9"), "4", ada);
    }

    @Test
    void isTheBudgetEverywhereOnceTheClientAccepts() throws Exception {
        byte[] bidBefore = bytes("/bids/" + first + "/paper.pdf");
        UUID change = issue("2 days");
        assertThat(client()).contains("Change order " + job.number() + " CO-1").contains("$310.00");
        assertThat(owner("/jobs/" + job.number())).contains("$1,260.00").doesNotContain("$1,570.00");

        mvc.perform(post("/c/{t}/bids/{b}/acceptance", token, change)
                        .param("name", "Orrin Baskwell")
                        .with(csrf()))
                .andExpect(redirectedUrl("/c/" + token + "?accepted"));

        // Price: title block, money of the job, the owner's list.
        assertThat(owner("/jobs/" + job.number())).contains("Bid A and a change $1,570.00");
        assertThat(one("select price_amount from costing_job")).isEqualTo("1570.00");
        // Hours and material: what the review and the job's hours compare with. 6 h 30 + 3 h; 603.00 + 72.00.
        assertThat(one("select sum(bid_minutes) from costing_task")).isEqualTo("570");
        assertThat(one("select sum(l.amount) from bid_material l join bid b on b.id = l.bid_id"
                        + " where b.state = 'accepted'"))
                .isEqualTo("675.00");
        assertThat(owner("/jobs/" + job.number() + "/review")).contains("$1,570.00");
        assertThat(owner("/jobs/" + job.number() + "/hours")).contains("9 h 30");
        // Days: from Friday two working days on.
        assertThat(one("select promised_on from job")).isEqualTo("2026-12-15");
        assertThat(owner("/jobs/" + job.number())).contains("Tue 15 Dec");
        // History: both papers as they were, both answers, the moved day.
        assertThat(bytes("/bids/" + first + "/paper.pdf")).isEqualTo(bidBefore);
        assertThat(owner("/bids/" + change + "/sums"))
                .contains("Accepted by Orrin Baskwell")
                .contains("The promised day moved from Fri 11 Dec to Tue 15 Dec.");
        assertThat(owner("/jobs/" + job.number() + "/estimate"))
                .contains(job.number() + " A")
                .contains(job.number() + " CO-1");
        assertThat(desk.get(job.id()).state().code()).isEqualTo("running");
    }

    @Test
    void movesThePromiseOnceHoweverOftenItIsAccepted() throws Exception {
        UUID change = issue("1 day");
        ClientYes yes = new ClientYes("Orrin Baskwell", Set.of(), "");
        bids.acceptByLink(change, job.id(), yes);
        bids.acceptByLink(change, job.id(), yes);

        assertThat(one("select promised_on from job")).isEqualTo("2026-12-14");
    }

    @Test
    void changesNothingWhileItIsOutOrDeclined() throws Exception {
        UUID change = issue("2");
        mvc.perform(post("/c/{t}/bids/{b}/refusal", token, change)
                        .param("pick", "price")
                        .with(csrf()))
                .andExpect(redirectedUrl("/c/" + token + "?declined"));

        assertThat(one("select price_amount from costing_job")).isEqualTo("1260.00");
        assertThat(one("select promised_on from job")).isEqualTo("2026-12-11");
        // Its lines are free for another offer.
        assertThat(owner("/jobs/" + job.number() + "/bids/new")).contains("$310.00");
    }

    @Test
    void refusesDaysThatAreNone() throws Exception {
        for (String days : new String[] {"soon", "-2", "1.5", "9999", "366"}) {
            Document again = Jsoup.parse(mvc.perform(form(days))
                    .andExpect(status().isUnprocessableContent())
                    .andReturn()
                    .getResponse()
                    .getContentAsString());
            assertThat(again.text()).contains("Give whole working days from 0 to 365");
            assertThat(again.select("[name=addedDays]").val()).isEqualTo(days);
        }
    }

    private UUID issue(String days) throws Exception {
        mvc.perform(form(days)).andExpect(status().is3xxRedirection());
        return jdbc.sql("select id from bid where kind = 'change order'")
                .query((row, n) -> row.getObject(1, UUID.class))
                .single();
    }

    /** (3 h x 49.40 + 8 bf at 9 + 3 x 15) / 0.85 = 312.00; to the nearest 10 */
    private MockHttpServletRequestBuilder form(String days) throws Exception {
        Document page = Jsoup.parse(
                mvc.perform(get("/jobs/" + job.number() + "/bids/new").with(signedIn(ada)))
                        .andReturn()
                        .getResponse()
                        .getContentAsString());
        MockHttpServletRequestBuilder form = post("/jobs/" + job.number() + "/bids")
                .param("title", "A drawer under the seat")
                .param("scope", "One drawer.")
                .param("exclusions", "")
                .param("terms", "")
                .param("validDays", "14")
                .param("addedDays", days);
        for (String name : new String[] {"id", "version", "seen"}) {
            form.param(name, page.select("[name=" + name + "]").val());
        }
        return form.with(signedIn(ada)).with(csrf());
    }

    private String owner(String path) throws Exception {
        return Jsoup.parse(new String(bytes(path), java.nio.charset.StandardCharsets.UTF_8))
                .text();
    }

    private byte[] bytes(String path) throws Exception {
        return mvc.perform(get(path).with(signedIn(ada)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsByteArray();
    }

    private String client() throws Exception {
        return Jsoup.parse(mvc.perform(get("/c/" + token))
                        .andReturn()
                        .getResponse()
                        .getContentAsString())
                .text();
    }

    private String one(String sql) {
        return jdbc.sql(sql).query(String.class).single();
    }
}
