package org.tallywright.estimates.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.estimates.BidDesk;
import org.tallywright.estimates.BidStanding;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.ClientYes;
import org.tallywright.estimates.Refusal;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.estimates.WinRates;
import org.tallywright.estimates.WinRates.Outcome;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Money;
import org.tallywright.web.SignedIn;

/** What became of the shop's offers. */
@AppTest
class WinsWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SampleEstimates sample;

    @Autowired
    BidDesk desk;

    @Autowired
    Bids bids;

    @Autowired
    WinRates rates;

    @Autowired
    TestClock clock;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;

    @BeforeEach
    void ada() {
        ada = people.owner();
    }

    /** A job with one cost of 850.00: 1,000.00 to the client. */
    private JobRef offered(String title, String kind) {
        JobRef job = jobs.lead(ada, title);
        UUID piece = jobs.piece(job, title, "40", "30", "12", ada);
        if (!kind.isEmpty()) {
            people.asShop(() -> {
                jdbc.sql(
                                "insert into piece_kind (id, name, version) values (gen_random_uuid(), ?, 0) on conflict do nothing")
                        .param(kind)
                        .update();
                jdbc.sql("update piece set piece_kind_id = (select id from piece_kind where name = ?) where id = ?")
                        .params(kind, piece)
                        .update();
            });
        }
        sample.other(job, "All of it", "850.00", ada);
        return job;
    }

    @Test
    void countsEachJobOnceByWhatBecameOfItsLastBid() throws Exception {
        JobRef won = offered("Bookcase for Ann", "Bookcase");
        sample.issued(won, ada);
        clock.advance(Duration.ofMinutes(1));
        bids.acceptByLink(sample.issued(won, ada), won.id(), new ClientYes("Ann Reed", Set.of(), ""));
        JobRef lost = offered("Bookcase for Ben", "Bookcase");
        bids.declineByLink(sample.issued(lost, ada), lost.id(), new Refusal("price", ""), "");
        JobRef back = offered("Mantel for Cay", "Mantel");
        desk.withdraw(sample.issued(back, ada), ada.personId());
        JobRef lapsed = offered("Mantel for Dee", "Mantel");
        sample.issued(lapsed, ada);
        clock.advance(Duration.ofDays(31));
        JobRef open = offered("Shelf for Eve", "");
        sample.issued(open, ada);
        jobs.lead(ada, "Never offered");

        WinRates.Record record = rates.read();
        assertThat(record.offers())
                .extracting(WinRates.Offered::title, WinRates.Offered::outcome, WinRates.Offered::issued)
                .containsExactlyInAnyOrder(
                        org.assertj.core.groups.Tuple.tuple("Bookcase for Ann", Outcome.WON, 2),
                        org.assertj.core.groups.Tuple.tuple("Bookcase for Ben", Outcome.LOST, 1),
                        org.assertj.core.groups.Tuple.tuple("Mantel for Cay", Outcome.WITHDRAWN, 1),
                        org.assertj.core.groups.Tuple.tuple("Mantel for Dee", Outcome.LAPSED, 1),
                        org.assertj.core.groups.Tuple.tuple("Shelf for Eve", Outcome.OPEN, 1));
        assertThat(record.all().decided()).isEqualTo(3);
        assertThat(record.all().money()).isEqualTo(Money.of("1000.00"));

        Document page = Jsoup.parse(mvc.perform(get("/bids").with(signedIn(ada)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
        assertThat(page.select("tr:contains(Bookcase)").first().text())
                .isEqualTo("Bookcase 2 1 1 0 0 $1,000.00 50 % of 2, between 16 % and 84 %; few bids, a hint at most");
        assertThat(page.select("tfoot tr").first().text())
                .isEqualTo("All jobs 5 1 1 1 1 $1,000.00 33 % of 3, between 11 % and 68 %; few bids, a hint at most");
        assertThat(page.select("tr:contains(Of no kind)").first().text()).endsWith("none decided yet");
        assertThat(page.text())
                .contains("3 offers are decided so far. That is little")
                .contains("The price");
    }

    @Test
    void isLinkedFromTheJobsAndFromTheBidsOfAnEstimateForTheOwner() throws Exception {
        JobRef seat = sample.windowSeat(ada);
        for (String path : new String[] {"/jobs", "/jobs/" + seat.number() + "/estimate", "/calibration"}) {
            String page = mvc.perform(get(path).with(signedIn(ada)))
                    .andReturn()
                    .getResponse()
                    .getContentAsString();
            assertThat(Jsoup.parse(page).select("main a[href=/bids]")).as(path).hasSize(1);
        }
        String lead = mvc.perform(get("/jobs").with(signedIn(people.lead())))
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(Jsoup.parse(lead).select("a[href=/bids]")).isEmpty();
    }

    @Test
    void isForTheOwnerAloneAndTeachesWhenEmpty() throws Exception {
        for (SignedIn one : new SignedIn[] {people.lead(), people.helper(), people.bookkeeper()}) {
            mvc.perform(get("/bids").with(signedIn(one))).andExpect(status().isForbidden());
        }
        assertThat(mvc.perform(get("/bids").with(signedIn(ada)))
                        .andExpect(status().isOk())
                        .andReturn()
                        .getResponse()
                        .getContentAsString())
                .contains("No bid issued yet");
    }

    /** Good through its last day on the shop's wall, wherever the server stands. */
    @Test
    void lapsesAtMidnightOfTheShop() {
        for (String zone : new String[] {"Pacific/Kiritimati", "America/Los_Angeles"}) {
            clock.reset();
            people.asShop(
                    () -> jdbc.sql("update shop set time_zone = ?").param(zone).update());
            JobRef job = offered("Shelf by " + zone, "");
            UUID bid = sample.issued(job, ada);
            var last = bids.paper(bid).validUntil();
            Instant midnight =
                    last.plusDays(1).atStartOfDay(java.time.ZoneId.of(zone)).toInstant();

            clock.set(midnight.minusSeconds(1));
            assertThat(bids.paper(bid).standing()).as(zone).isEqualTo(BidStanding.OPEN);
            clock.set(midnight);
            assertThat(bids.paper(bid).standing()).as(zone).isEqualTo(BidStanding.EXPIRED);
            assertThat(rates.read().offers().get(0).outcome()).isEqualTo(Outcome.LAPSED);
            org.assertj.core.api.Assertions.assertThatThrownBy(
                            () -> bids.acceptByLink(bid, job.id(), new ClientYes("Eve", Set.of(), "")))
                    .hasMessageContaining("was good until");
        }
    }
}
