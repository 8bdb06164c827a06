package org.tallywright.estimates.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.estimates.BidDifference;
import org.tallywright.estimates.BidDifference.Change;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.EstimateLines;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobRef;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Money;
import org.tallywright.web.SignedIn;

/** Bid B beside bid A. */
@AppTest
class RevisionWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleEstimates sample;

    @Autowired
    EstimateLines lines;

    @Autowired
    Bids bids;

    @Autowired
    TestClock clock;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;
    JobRef job;

    @BeforeEach
    void bid() {
        ada = people.owner();
        job = sample.windowSeat(ada);
    }

    @Test
    void listsWhatWasAddedDroppedAndChangedWithBothFigures() throws Exception {
        UUID first = sample.issued(job, ada);
        UUID delivery = jdbc.sql("select id from estimate_other")
                .query((row, n) -> row.getObject(1, UUID.class))
                .single();
        lines.removeOther(job.id(), delivery, ada.personId());
        sample.other(job, "Hired lift", "120.00", ada);
        // 200 lf to rip instead of 100: 3 h instead of 1 h 30.
        people.asShop(
                () -> jdbc.sql("update task set quantity = 200, estimated_minutes = 180 where name = 'Rip hardwood'")
                        .update());
        clock.advance(Duration.ofMinutes(5));
        UUID second = sample.issued(job, ada);

        BidDifference d = BidDifference.between(bids.inside(first), bids.inside(second));
        assertThat(d.lines())
                .extracting(BidDifference.Line::change, BidDifference.Line::name)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(Change.CHANGED, "Rip hardwood, Window seat"),
                        org.assertj.core.groups.Tuple.tuple(Change.DROPPED, "Delivery"),
                        org.assertj.core.groups.Tuple.tuple(Change.ADDED, "Hired lift"));
        BidDifference.Sum labour = d.sums().get(0);
        assertThat(labour.part()).isEqualTo("labour");
        assertThat(labour.difference()).isEqualTo(Money.of("74.10"));
        assertThat(d.sums()).extracting(BidDifference.Sum::part).doesNotContain("material", "tax", "total");

        Document page = page(second);
        Element section = page.select("section:has(h2:contains(Since))").first();
        List<String> rows = section.select("tbody tr").eachText();
        assertThat(rows)
                .anySatisfy(row -> assertThat(row)
                        .contains("Rip hardwood", "changed", "100 lf", "1 h 30", "$74.10", "200 lf", "3 h", "$148.20"));
        assertThat(rows).anySatisfy(row -> assertThat(row).contains("Price", "$1,260.00", "$1,460.00", "+$200.00"));
        assertThat(page(first).select("h2:contains(Since)")).isEmpty();
    }

    @Test
    void saysSoWhereNothingDiffers() throws Exception {
        sample.issued(job, ada);
        clock.advance(Duration.ofMinutes(5));
        assertThat(page(sample.issued(job, ada)).text()).contains("No line differs.");
    }

    private Document page(UUID bid) throws Exception {
        return Jsoup.parse(mvc.perform(get("/bids/" + bid + "/sums").with(signedIn(ada)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }
}
