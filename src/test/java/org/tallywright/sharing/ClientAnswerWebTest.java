package org.tallywright.sharing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.estimates.BidStanding;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.trail.Trail;
import org.tallywright.web.SignedIn;

/** A client answers a bid by his link: yes, or no with a reason. */
@AppTest
class ClientAnswerWebTest {
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
    JobDesk jobDesk;

    @Autowired
    ClientLinks links;

    @Autowired
    TestClock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Trail trail;

    SignedIn ada;
    JobRef job;
    UUID bid;
    String token;

    @BeforeEach
    void adaSharesABid() {
        ada = people.owner();
        job = sample.windowSeat(ada);
        bid = sample.issued(job, ada);
        token = links.make(job.id(), "Orrin", 90, ada.personId());
    }

    /** The owner gave the job up without a word about the bid that is out; taken up again, the bid stands again. */
    @Test
    void takesNoYesForAJobThatIsLost() throws Exception {
        jobDesk.lose(job.id(), "No answer", ada.personId());

        assertThat(page("/c/" + token)).doesNotContain("Accept ").doesNotContain("$1,260.00");
        mvc.perform(post("/c/" + token + "/bids/" + bid + "/acceptance")
                        .param("name", "Orrin Baskwell")
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("does not stand any more")));
        assertThatThrownBy(() -> bids.accept(bid, "Orrin", LocalDate.of(2026, 11, 25), Set.of(), ada.personId()))
                .hasMessageContaining("given up");

        jobDesk.reopen(job.id(), "He called", ada.personId());
        assertThat(page("/c/" + token)).contains("Accept " + job.number() + " A");
    }

    private String page(String path) throws Exception {
        return mvc.perform(get(path))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }

    @Test
    void keepsANoWithReasonTimeAndAddressForTheOwner() throws Exception {
        no("price", "We had 1,000 in mind.\nSorry.").andExpect(redirectedUrl("/c/" + token + "?declined"));
        clock.advance(Duration.ofMinutes(3));
        no("dates", "Twice").andExpect(status().is3xxRedirection());

        String owner = sums();
        assertThat(owner)
                .contains("Declined on Wed 25 Nov by the link, recorded Wed 25 Nov at ")
                .contains("from 203.0.113.7")
                .contains("The price. We had 1,000 in mind. Sorry.")
                .contains("Write a revision")
                .doesNotContain("Twice");
        assertThat(client()).contains("declined").doesNotContain("Accept " + job.number());
    }

    @Test
    void keepsTheAddressOfAYes() throws Exception {
        mvc.perform(post("/c/{t}/bids/{b}/acceptance", token, bid)
                        .param("name", "Orrin Baskwell")
                        .with(csrf())
                        .with(request -> {
                            request.setRemoteAddr("203.0.113.9");
                            return request;
                        }))
                .andExpect(redirectedUrl("/c/" + token + "?accepted"));

        assertThat(sums())
                .contains("Accepted by Orrin Baskwell on Wed 25 Nov by the link")
                .contains("203.0.113.9");
        no("price", "").andExpect(status().isUnprocessableContent());
        assertThat(bids.paper(bid).standing()).isEqualTo(BidStanding.ACCEPTED);
    }

    @Test
    void asksForAReasonInWordsAndKeepsWhatWasTyped() throws Exception {
        assertThat(page(no("", "  ").andExpect(status().isUnprocessableContent())))
                .contains("Pick a reason, or say it in a few words.");
        assertThat(page(no("", "x".repeat(10_000)).andExpect(status().isUnprocessableContent())))
                .contains("8000 characters too long")
                .contains("x".repeat(10_000));
        no("because", "").andExpect(status().isUnprocessableContent());
        assertThat(bids.paper(bid).standing()).isEqualTo(BidStanding.OPEN);
    }

    @Test
    void opensNoBidOfAnotherJob() throws Exception {
        String other = links.make(jobs.lead(ada, "Pantry").id(), "Somebody", 30, ada.personId());
        mvc.perform(post("/c/{t}/bids/{b}/refusal", other, bid)
                        .param("pick", "price")
                        .with(csrf()))
                .andExpect(status().isNotFound());
        assertThat(bids.paper(bid).standing()).isEqualTo(BidStanding.OPEN);
    }

    @Test
    void takesNoYesAfterANoButARevision() throws Exception {
        no("price", "").andExpect(status().is3xxRedirection());
        assertThat(page(yes(bid).andExpect(status().isUnprocessableContent()))).contains("was declined");

        clock.advance(Duration.ofMinutes(5));
        UUID second = sample.issued(job, ada);
        assertThat(bids.paper(bid).standing()).isEqualTo(BidStanding.DECLINED);
        yes(second).andExpect(redirectedUrl("/c/" + token + "?accepted"));
        assertThat(bids.paper(second).standing()).isEqualTo(BidStanding.ACCEPTED);
    }

    @Test
    void recordsANoTheOwnerHeard() throws Exception {
        ResultActions said = mvc.perform(post("/bids/{b}/refusal", bid)
                .param("pick", "elsewhere")
                .param("reason", "A cousin does it")
                .with(signedIn(ada))
                .with(csrf()));
        said.andExpect(status().is3xxRedirection());
        assertThat(sums())
                .contains("Declined on Wed 25 Nov, recorded here")
                .contains("Somebody else does it. A cousin does it");
        mvc.perform(post("/bids/{b}/refusal", bid)
                        .param("pick", "price")
                        .with(signedIn(ada))
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent());
    }

    /** Yes and no at the same moment, three times each: one of them holds, and nothing breaks. */
    @Test
    void keepsOneAnswerWhenSeveralArriveTogether() throws Exception {
        CyclicBarrier start = new CyclicBarrier(6);
        ExecutorService threads = Executors.newFixedThreadPool(6);
        try {
            List<Future<Integer>> all = new java.util.ArrayList<>();
            for (int i = 0; i < 6; i++) {
                boolean yes = i % 2 == 0;
                all.add(threads.submit(() -> {
                    start.await();
                    return (yes ? yes(bid) : no("later", ""))
                            .andReturn()
                            .getResponse()
                            .getStatus();
                }));
            }
            for (Future<Integer> one : all) {
                assertThat(one.get(60, TimeUnit.SECONDS)).isIn(302, 422);
            }
        } finally {
            threads.shutdownNow();
        }
        assertThat(bids.paper(bid).standing()).isIn(BidStanding.ACCEPTED, BidStanding.DECLINED);
        assertThat(jdbc.sql("select count(*) from audit_entry where subject = 'bid' and act = 'update'")
                        .query(Integer.class)
                        .single())
                .isOne();
    }

    @Test
    void hasItsRulesInTheDatabaseToo() {
        for (String sql : new String[] {
            "update bid set declined_words = 'too dear'",
            "update bid set answered_from = '203.0.113.7'",
            "update bid set state = 'declined', declined_at = issued_at",
            "update bid set declined_for = 'whim', state = 'declined'"
        }) {
            assertThatThrownBy(() -> transaction.executeWithoutResult(status -> {
                        trail.by(ada.personId());
                        jdbc.sql(sql).update();
                    }))
                    .as(sql)
                    .isInstanceOf(DataAccessException.class);
        }
    }

    @Test
    void showsTheClientWhatARevisionChangesAndNoCost() throws Exception {
        sample.other(job, "Hired lift", "120.00", ada);
        clock.advance(Duration.ofMinutes(5));
        sample.issued(job, ada);

        assertThat(client())
                .contains("What changed since " + job.number() + " A")
                .contains("Price $1,260.00 now Price $1,400.00")
                .doesNotContain("Hired lift")
                .doesNotContain("165.50");
    }

    private ResultActions no(String pick, String reason) throws Exception {
        return mvc.perform(post("/c/{t}/bids/{b}/refusal", token, bid)
                .param("pick", pick)
                .param("reason", reason)
                .with(csrf())
                .with(request -> {
                    request.setRemoteAddr("203.0.113.7");
                    return request;
                }));
    }

    private ResultActions yes(UUID one) throws Exception {
        return mvc.perform(post("/c/{t}/bids/{b}/acceptance", token, one)
                .param("name", "Orrin Baskwell")
                .with(csrf()));
    }

    private String sums() throws Exception {
        return page(mvc.perform(get("/bids/{b}/sums", bid).with(signedIn(ada))).andExpect(status().isOk()));
    }

    private String client() throws Exception {
        return page(mvc.perform(get("/c/" + token)).andExpect(status().isOk()));
    }

    private static String page(ResultActions answer) throws Exception {
        return Jsoup.parse(answer.andReturn().getResponse().getContentAsString())
                .text();
    }
}
