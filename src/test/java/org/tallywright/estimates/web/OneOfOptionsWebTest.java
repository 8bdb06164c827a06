package org.tallywright.estimates.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.estimates.BidPaper;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.CostSort;
import org.tallywright.estimates.EstimateLines;
import org.tallywright.estimates.OptionDesk;
import org.tallywright.estimates.OptionDraft;
import org.tallywright.estimates.OtherDraft;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.estimates.print.Pdf;
import org.tallywright.jobs.JobRef;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Money;
import org.tallywright.sharing.ClientLinks;
import org.tallywright.web.SignedIn;

/** A seat with hooks to tick, and two tops of which the client takes one or none. */
@AppTest
class OneOfOptionsWebTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleEstimates sample;

    @Autowired
    EstimateLines lines;

    @Autowired
    OptionDesk options;

    @Autowired
    Bids bids;

    @Autowired
    ClientLinks links;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;
    JobRef job;
    UUID bid;
    UUID hooks;
    UUID oak;
    UUID slate;
    String token;

    /** 80 / 0.85, 170 / 0.85 and 340 / 0.85, to the nearest 10: 90, 200 and 400. */
    @BeforeEach
    void bidWithTops() {
        ada = people.owner();
        job = sample.windowSeat(ada);
        option("Brass hooks", "", sample.other(job, "Six hooks", "80.00", ada));
        option("Oak top", "Bench top", allowance("Oak, chosen with you", "170.00"));
        option("Slate top", "bench top", sample.other(job, "Slate", "340.00", ada));
        bid = sample.issued(job, ada);
        List<BidPaper.Option> offered = bids.paper(bid).options();
        hooks = offered.get(0).id();
        oak = offered.get(1).id();
        slate = offered.get(2).id();
        token = links.make(job.id(), "Orrin", 90, ada.personId());
    }

    /** Oak was taken, so slate is no more to be had beside it; where neither was, one of them is. */
    @Test
    void oneOfAGroupIsOfferedAgainOnlyWhereNoOtherIs() throws Exception {
        bids.accept(bid, "Orrin", TODAY, Set.of(oak), ada.personId());
        again("Slate top").andExpect(status().isUnprocessableContent());
        again("Brass hooks").andExpect(status().is3xxRedirection());
    }

    @Test
    void twoOfAGroupThatWereLeftOutAreNotBothOfferedAgain() throws Exception {
        bids.accept(bid, "Orrin", TODAY, Set.of(), ada.personId());
        again("Slate top").andExpect(status().is3xxRedirection());
        again("Oak top").andExpect(status().isUnprocessableContent());
    }

    private ResultActions again(String name) throws Exception {
        UUID id = jdbc.sql("select id from estimate_option where job_id = ? and name = ?")
                .params(job.id(), name)
                .query(UUID.class)
                .single();
        return mvc.perform(post("/jobs/" + job.number() + "/estimate/options/" + id + "/offer")
                .with(signedIn(ada))
                .with(csrf()));
    }

    private void option(String name, String oneOf, UUID line) {
        options.save(job.id(), new OptionDraft(Ids.next(), null, name, "", oneOf, Set.of(line)), ada.personId());
    }

    private UUID allowance(String what, String amount) {
        UUID id = Ids.next();
        lines.save(job.id(), new OtherDraft(id, null, CostSort.ALLOWANCE, what, Money.of(amount)), ada.personId());
        return id;
    }

    @Test
    void areRadiosWithNoneOfTheseAndTheSumIsShownBeforeTheYes() throws Exception {
        Document page = page(get("/c/" + token), 200);
        assertThat(page.select("input[name=options]").eachAttr("value")).containsExactly(hooks.toString());
        assertThat(page.select("fieldset:has(legend:contains(Bench top)) input[type=radio]")
                        .eachAttr("value"))
                .containsExactly(oak.toString(), slate.toString(), "");
        assertThat(page.select("input[type=radio][checked]").eachAttr("value")).containsExactly("");
        assertThat(page.text()).contains("Option, one of bench top: Slate top $400.00");

        Document choice = page(
                get("/c/" + token + "/bids/" + bid + "/acceptance")
                        .param("options", hooks.toString())
                        .param("oneOf[1]", slate.toString()),
                200);
        assertThat(choice.select("tfoot").text()).isEqualTo("In all $1,750.00");
        assertThat(choice.select("#sum-" + bid).text()).isEqualTo("$1,750.00");
        assertThat(choice.select("input[name=options]").eachAttr("value"))
                .containsExactlyInAnyOrder(hooks.toString(), slate.toString());
        assertThat(page(get(acceptance()).param("oneOf[1]", ""), 200)
                        .select("tfoot")
                        .text())
                .isEqualTo("In all $1,260.00");

        mvc.perform(post(acceptance())
                        .param("name", "Orrin Baskwell")
                        .param("options", hooks.toString(), slate.toString())
                        .with(csrf()))
                .andExpect(redirectedUrl("/c/" + token + "?accepted"));
        assertThat(bids.paper(bid).agreed()).isEqualTo(Money.of("1750.00"));
    }

    @Test
    void twoOfOneGroupAreRefusedAndWhatWasTickedIsKept() throws Exception {
        String both = "Take one of \u201cOak top\u201d and \u201cSlate top\u201d, or neither";
        Document looked =
                page(get(acceptance()).param("options", hooks.toString(), oak.toString(), slate.toString()), 422);
        assertThat(looked.select(".error").text()).contains(both);
        assertThat(looked.select("#option-" + hooks).hasAttr("checked")).isTrue();
        assertThat(looked.select("#option-" + oak).hasAttr("checked")).isTrue();

        Document said = page(
                post(acceptance())
                        .param("name", "Orrin Baskwell")
                        .param("options", oak.toString())
                        .param("oneOf[1]", slate.toString())
                        .with(csrf()),
                422);
        assertThat(said.text()).contains(both);
        assertThat(said.select("[name=name]").val()).isEqualTo("Orrin Baskwell");

        Document recorded = page(
                post("/bids/" + bid + "/acceptance")
                        .param("name", "Orrin Baskwell")
                        .param("on", "2026-11-25")
                        .param("options", hooks.toString(), oak.toString(), slate.toString())
                        .with(signedIn(ada))
                        .with(csrf()),
                422);
        assertThat(recorded.select(".error").text()).contains(both);
        assertThat(recorded.select("#options-" + hooks).hasAttr("checked")).isTrue();
        assertThat(bids.paper(bid).accepted()).isFalse();
        page(get(acceptance()).param("oneOf[0]", "nonsense"), 422);
    }

    @Test
    void theOwnerRecordsOneOfThem() throws Exception {
        Document form = page(get("/bids/" + bid + "/sums").with(signedIn(ada)), 200);
        assertThat(form.select("input[name='oneOf[1]']").eachAttr("value"))
                .containsExactly(oak.toString(), slate.toString(), "");
        mvc.perform(post("/bids/" + bid + "/acceptance")
                        .param("name", "Orrin Baskwell")
                        .param("on", "2026-11-25")
                        .param("oneOf[1]", oak.toString())
                        .with(signedIn(ada))
                        .with(csrf()))
                .andExpect(redirectedUrl("/bids/" + bid + "/sums"));
        assertThat(bids.paper(bid).chose(oak)).isTrue();
        assertThat(bids.paper(bid).chose(slate)).isFalse();
    }

    @Test
    void theDatabaseTakesOneOfAGroupHoweverItIsSpelt() {
        assertThatThrownBy(() -> people.asShop(() -> jdbc.sql(
                                "update bid set state = 'accepted', accepted_at = issued_at, accepted_on = issued_on"
                                        + " where id in (?, ?, ?)")
                        .params(bid, oak, slate)
                        .update()))
                .isInstanceOf(DataAccessException.class)
                .hasMessageContaining("bid_one_of_a_group");
    }

    @Test
    void groupsAndAllowancesStandOnThePaperAndInThePdf() throws Exception {
        String paper = page(get("/bids/" + bid).with(signedIn(ada)), 200).text();
        // What the price of the option holds for it, as in the bid itself: 170 / 0.85.
        String allowance = "Holds an allowance: Oak, chosen with you, $200.00";
        assertThat(paper).contains("Bench top: one of these, or none").contains(allowance);
        assertThat(page(get("/c/" + token), 200).text()).contains(allowance);
        assertThat(page(get("/c/" + token + "/bids/" + bid), 200).text()).contains(allowance);
        String pdf = new Pdf(mvc.perform(get("/bids/" + bid + "/paper.pdf").with(signedIn(ada)))
                        .andReturn()
                        .getResponse()
                        .getContentAsByteArray())
                .text();
        assertThat(pdf).contains("Bench top: one of these, or none").contains(allowance);
        assertThat(pdf + paper).doesNotContain("170.00").doesNotContain("Six hooks");
    }

    @Test
    void theGroupIsKeptAndRefusedBesideItsBox() throws Exception {
        String id = Ids.next().toString();
        MockHttpServletRequestBuilder form = post("/jobs/" + job.number() + "/estimate/options")
                .param("id", id)
                .param("version", "")
                .param("name", "Cork top")
                .param("words", "")
                .with(signedIn(ada))
                .with(csrf());
        Document refused = page(form.param("oneOf", "x".repeat(61)), 422);
        assertThat(refused.select("#oneOf-error").text()).contains("too long");
        assertThat(refused.select("[name=oneOf]").val()).hasSize(61);

        mvc.perform(post("/jobs/" + job.number() + "/estimate/options")
                        .param("id", id)
                        .param("version", "")
                        .param("name", "Cork top")
                        .param("words", "")
                        .param("oneOf", "Bench top")
                        .with(signedIn(ada))
                        .with(csrf()))
                .andExpect(status().is3xxRedirection());
        assertThat(page(get("/jobs/" + job.number() + "/estimate/options/" + id).with(signedIn(ada)), 200)
                        .select("[name=oneOf]")
                        .val())
                .isEqualTo("Bench top");
        assertThat(page(get("/jobs/" + job.number() + "/estimate").with(signedIn(ada)), 200)
                        .select("#options")
                        .text())
                .contains("Cork top Bench top: one of these, or none");
    }

    private String acceptance() {
        return "/c/" + token + "/bids/" + bid + "/acceptance";
    }

    private Document page(MockHttpServletRequestBuilder request, int expected) throws Exception {
        return Jsoup.parse(mvc.perform(request)
                .andExpect(status().is(expected))
                .andReturn()
                .getResponse()
                .getContentAsString());
    }
}
