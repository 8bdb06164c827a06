package org.tallywright.past.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.hamcrest.Matchers;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.tallywright.AppTest;
import org.tallywright.estimates.EstimateLines;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.past.CopyOffer;
import org.tallywright.past.CopyOffers;
import org.tallywright.past.CopyPlan;
import org.tallywright.past.Copyist;
import org.tallywright.past.PastJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

/** Delivery that the owner copied from a whole job, and a lead who sees no other costs. */
@AppTest
class CopyRemovalWebTest {
    private static final String HINT = "Other costs came with it, so only an owner takes it out.";

    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleEstimates estimates;

    @Autowired
    SampleJobs jobs;

    @Autowired
    PastJobs past;

    @Autowired
    CopyOffers offers;

    @Autowired
    Copyist copyist;

    @Autowired
    EstimateLines lines;

    @Autowired
    JdbcClient jdbc;

    private SignedIn owner;
    private SignedIn lead;
    private JobRef into;
    private String removal;

    @BeforeEach
    void copyDelivery() {
        owner = people.owner();
        lead = people.lead();
        JobRef whole = estimates.windowSeat(owner);
        into = jobs.lead(owner, "Seat for the library");
        CopyOffer offer = offers.offer(into, past.job(whole.number(), true), true, Map.of(), Map.of());
        CopyPlan plan = new CopyPlan(
                Ids.next(),
                offer.from(),
                null,
                whole.number(),
                List.of(),
                List.of(),
                List.of(),
                offer.costs().stream().map(CopyOffer.CostLine::past).toList());
        copyist.copy(into.id(), plan, owner.personId());
        removal = "/jobs/" + into.number() + "/copies/" + plan.id() + "/removal";
    }

    private Document estimate(SignedIn who) throws Exception {
        return Jsoup.parse(
                mvc.perform(get("/jobs/" + into.number() + "/estimate").with(signedIn(who)))
                        .andExpect(status().isOk())
                        .andReturn()
                        .getResponse()
                        .getContentAsString());
    }

    private ResultActions takeOut(SignedIn who) throws Exception {
        return mvc.perform(post(removal).with(csrf()).with(signedIn(who)));
    }

    private List<String> costs() {
        return jdbc.sql("select description || ' ' || amount from estimate_other where job_id = ?")
                .param(into.id())
                .query(String.class)
                .list();
    }

    @Test
    void leadTakesNoCostsOutThatHeDoesNotSee() throws Exception {
        Document page = estimate(lead);
        assertThat(page.select("form[action*=/copies/]")).isEmpty();
        assertThat(page.text()).contains(HINT).doesNotContain("Delivery", "45.50");

        takeOut(lead)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(Matchers.containsString("only an owner takes it out")))
                .andExpect(content().string(Matchers.not(Matchers.containsString("45.50"))));

        assertThat(costs()).containsExactly("Delivery 45.50");
    }

    @Test
    void ownerTakesThemOut() throws Exception {
        Document page = estimate(owner);
        assertThat(page.select("form[action=" + removal + "]")).hasSize(1);
        assertThat(page.text()).doesNotContain(HINT);

        takeOut(owner).andExpect(status().is3xxRedirection());

        assertThat(costs()).isEmpty();
    }

    /** Once the owner has removed the cost itself, nothing unseen is left in the copy. */
    @Test
    void leadTakesOutWhatHoldsNoCostsAnyMore() throws Exception {
        UUID delivery = jdbc.sql("select id from estimate_other where job_id = ?")
                .param(into.id())
                .query(UUID.class)
                .single();
        lines.removeOther(into.id(), delivery, owner.personId());
        assertThat(estimate(lead).select("form[action=" + removal + "]")).hasSize(1);

        takeOut(lead).andExpect(status().is3xxRedirection());

        assertThat(jdbc.sql("select count(*) from past_copy")
                        .query(Integer.class)
                        .single())
                .isZero();
    }
}
