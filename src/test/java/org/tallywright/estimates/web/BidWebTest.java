package org.tallywright.estimates.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.Duration;
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
import org.tallywright.TestClock;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobRef;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

@AppTest
class BidWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleEstimates sample;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Everything everything;

    @Autowired
    TestClock clock;

    SignedIn ada;
    JobRef job;

    @BeforeEach
    void bid() {
        ada = people.owner();
        job = sample.windowSeat(ada);
    }

    @Test
    void issuesOnceHoweverOftenTheButtonIsPressed() throws Exception {
        MockHttpServletRequestBuilder issue = issue(blank());

        send(issue, ada).andExpect(status().is3xxRedirection());
        send(issue, ada).andExpect(status().is3xxRedirection());

        assertThat(sample.bidsOf(job)).hasSize(1);
    }

    @Test
    void asksToLookAgainWhenTheSumMoved() throws Exception {
        Document form = blank();
        sample.other(job, "Hired lift", "120.00", ada);
        Document again = Jsoup.parse(body(send(issue(form), ada).andExpect(status().isUnprocessableContent())));

        assertThat(again.text()).contains("it was 1,260.00, now it is 1,400.00");
        assertThat(again.select("[name=scope]").text()).contains("Ends scribed to the walls");
        assertThat(sample.bidsOf(job)).isEmpty();
        send(issue(again), ada).andExpect(status().is3xxRedirection());
        assertThat(sample.bidsOf(job)).hasSize(1);
    }

    @Test
    void showsBothVersionsOfTheWordsInsteadOfOverwritingThem() throws Exception {
        Document slower = blank();
        Document faster = blank();
        send(
                        post("/jobs/" + job.number() + "/estimate/words")
                                .param(
                                        "version",
                                        faster.select("[name=version]").val())
                                .param("scope", "Two window seats.")
                                .param("exclusions", "")
                                .param("terms", ""),
                        ada)
                .andExpect(status().is3xxRedirection());

        Document conflict = Jsoup.parse(body(send(issue(slower), ada).andExpect(status().isConflict())));
        assertThat(conflict.select("tbody tr").first().text()).contains("Two window seats.", "Ends scribed");
        assertThat(sample.bidsOf(job)).isEmpty();
        assertThat(jdbc.sql("select scope from estimate").query(String.class).single())
                .isEqualTo("Two window seats.");

        slower.select("[name=title]").val("");
        Document again = Jsoup.parse(body(send(issue(slower), ada).andExpect(status().isUnprocessableContent())));
        again.select("[name=title]").val("Window seat");
        send(issue(again), ada).andExpect(status().isConflict());
    }

    @Test
    void readsTheSameAfterEverythingHasChanged() throws Exception {
        UUID bid = sample.issued(job, ada);
        byte[] before = bytes("/bids/" + bid);

        everything.changes(ada);

        assertThat(bytes("/bids/" + bid)).isEqualTo(before);
        String text = new String(before, java.nio.charset.StandardCharsets.UTF_8);
        assertThat(text)
                .contains("Fenn Joinery")
                .contains("Orrin Baskwell")
                .contains("5&#39; 1 3/8&quot; wide")
                .contains("$1,260.00");
        Document inside =
                Jsoup.parse(body(mvc.perform(get("/bids/" + bid + "/sums").with(signedIn(ada)))));
        assertThat(inside.text()).contains("321.10").contains("Rip hardwood").contains("White oak, rough");
    }

    @Test
    void tellsTheClientNothingOfHoursCostOrMargin() throws Exception {
        String paper = new String(bytes("/bids/" + sample.issued(job, ada)), java.nio.charset.StandardCharsets.UTF_8);

        assertThat(paper)
                .doesNotContain("6 h 30")
                .doesNotContain("49.40")
                .doesNotContain("321.10")
                .doesNotContain("603.00")
                .doesNotContain("97.50")
                .doesNotContain("45.50")
                .doesNotContain("1,255")
                .doesNotContain("Rip hardwood")
                .doesNotContainIgnoringCase("margin")
                .doesNotContainIgnoringCase("overhead");
    }

    @Test
    void isForTheOwnerAlone() throws Exception {
        UUID bid = sample.issued(job, ada);
        for (SignedIn one : new SignedIn[] {people.lead(), people.helper(), people.bookkeeper()}) {
            for (String path : new String[] {"", "/sums"}) {
                String html = body(mvc.perform(get("/bids/" + bid + path).with(signedIn(one)))
                        .andExpect(status().isForbidden()));
                assertThat(html).doesNotContain("1,260").doesNotContain("321.10");
            }
            for (String path : new String[] {"/acceptance", "/withdrawal", "/refusal"}) {
                send(post("/bids/" + bid + path), one).andExpect(status().isForbidden());
            }
        }
        mvc.perform(get("/bids/" + UUID.randomUUID()).with(signedIn(ada))).andExpect(status().isNotFound());
        mvc.perform(get("/bids/nothing").with(signedIn(ada))).andExpect(status().isNotFound());
    }

    @Test
    void recordsAnAcceptanceAndRefusesOneGivenTooLate() throws Exception {
        UUID bid = sample.issued(job, ada);
        clock.advance(Duration.ofDays(40));

        String late = body(accept(bid, "Orrin Baskwell", "2026-12-30").andExpect(status().isUnprocessableContent()));
        assertThat(late).contains("value=\"2026-12-30\"");
        accept(bid, "", "2026-12-01").andExpect(status().isUnprocessableContent());
        accept(bid, "Orrin Baskwell", "yesterday").andExpect(status().isUnprocessableContent());
        accept(bid, "Orrin Baskwell", "2026-12-01").andExpect(status().is3xxRedirection());
        accept(bid, "Orrin Baskwell", "2026-12-01").andExpect(status().is3xxRedirection());

        assertThat(body(mvc.perform(get("/bids/" + bid).with(signedIn(ada)))))
                .contains("Accepted by Orrin Baskwell on 1 December 2026");
        send(post("/bids/" + bid + "/withdrawal"), ada).andExpect(status().isUnprocessableContent());
    }

    @Test
    void showsOnThePaperThatItIsNoLongerOnOffer() throws Exception {
        UUID first = sample.issued(job, ada);
        clock.advance(Duration.ofMinutes(5));
        UUID second = sample.issued(job, ada);
        assertThat(new String(bytes("/bids/" + first))).contains("A newer bid has followed this one.");

        clock.advance(Duration.ofDays(31));
        assertThat(new String(bytes("/bids/" + second))).contains("it was good until 25 December 2026");
        send(post("/bids/" + second + "/refusal"), ada).andExpect(status().is3xxRedirection());
        assertThat(new String(bytes("/bids/" + second))).contains("Declined.");
    }

    @Test
    void marksTheTitleBlockForTheOwnerOnly() throws Exception {
        sample.issued(job, ada);
        String path = "/jobs/" + job.number() + "/estimate";

        assertThat(Jsoup.parse(body(mvc.perform(get(path).with(signedIn(ada)))))
                        .select(".titleblock")
                        .text())
                .contains("Bid A, open $1,260.00");
        assertThat(Jsoup.parse(body(mvc.perform(get(path).with(signedIn(people.lead())))))
                        .select(".titleblock")
                        .text())
                .doesNotContain("Bid A")
                .doesNotContain("1,260");
    }

    private Document blank() throws Exception {
        Document page = Jsoup.parse(
                body(mvc.perform(get("/jobs/" + job.number() + "/bids/new").with(signedIn(ada)))));
        page.select("[name=scope]").first().text("Build and install one window seat.\nEnds scribed to the walls.");
        return page;
    }

    /** The form of the page, as a browser would send it. */
    private MockHttpServletRequestBuilder issue(Document page) {
        MockHttpServletRequestBuilder form = post("/jobs/" + job.number() + "/bids");
        for (String name : new String[] {"id", "version", "seen", "title", "validDays"}) {
            form.param(name, page.select("[name=" + name + "]").val());
        }
        for (String name : new String[] {"scope", "exclusions", "terms"}) {
            form.param(name, page.select("[name=" + name + "]").first().wholeText());
        }
        return form;
    }

    private ResultActions accept(UUID bid, String name, String on) throws Exception {
        return send(post("/bids/" + bid + "/acceptance").param("name", name).param("on", on), ada);
    }

    private ResultActions send(MockHttpServletRequestBuilder form, SignedIn me) throws Exception {
        return mvc.perform(form.with(signedIn(me)).with(csrf()));
    }

    private byte[] bytes(String path) throws Exception {
        return mvc.perform(get(path).with(signedIn(ada)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsByteArray();
    }

    private static String body(ResultActions actions) throws Exception {
        return actions.andReturn().getResponse().getContentAsString();
    }
}
