package org.tallywright.estimates.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jspecify.annotations.Nullable;
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
import org.tallywright.estimates.OptionDesk;
import org.tallywright.estimates.OptionDraft;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobRef;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Money;
import org.tallywright.sharing.ClientLinks;
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
    OptionDesk options;

    @Autowired
    ClientLinks links;

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

        BidDifference d = BidDifference.between(offered(first), offered(second));
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

    private BidDifference.Offered offered(UUID bid) {
        return new BidDifference.Offered(bids.inside(bid), bids.optionsInside(bid));
    }

    @Test
    void comparesOptionsWithTheirPricesAndLines() throws Exception {
        UUID six = sample.other(job, "Six hooks", "80.00", ada);
        UUID hooks = option(Ids.next(), null, "Brass hooks", "Six, set by you.", six);
        option(Ids.next(), null, "Oak top", "", sample.other(job, "Oak", "170.00", ada));
        option(Ids.next(), null, "Lamp", "", sample.other(job, "Lamp, fitted", "85.00", ada));
        UUID first = sample.issued(job, ada);
        UUID two = sample.other(job, "Two more hooks", "34.00", ada);
        option(hooks, 0, "Brass and iron hooks", "Eight.", six, two);
        options.remove(job.id(), optionOf("Oak top"), ada.personId());
        jdbc.sql("select id from estimate_other where description = 'Oak'")
                .query((row, n) -> row.getObject(1, UUID.class))
                .list()
                .forEach(id -> lines.removeOther(job.id(), id, ada.personId()));
        option(Ids.next(), null, "Slate top", "", sample.other(job, "Slate", "340.00", ada));
        clock.advance(Duration.ofMinutes(5));
        UUID second = sample.issued(job, ada);

        BidDifference d = BidDifference.between(offered(first), offered(second));
        assertThat(d.lines()).isEmpty();
        assertThat(d.options())
                .extracting(BidDifference.Option::change, BidDifference.Option::old, BidDifference.Option::now)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(
                                Change.CHANGED, named("Brass hooks", "90.00"), named("Brass and iron hooks", "130.00")),
                        org.assertj.core.groups.Tuple.tuple(Change.DROPPED, named("Oak top", "200.00"), null),
                        org.assertj.core.groups.Tuple.tuple(Change.ADDED, null, named("Slate top", "400.00")));
        assertThat(page(second)
                        .select("table:has(caption:contains(Options)) tr")
                        .eachText())
                .anySatisfy(
                        row -> assertThat(row).isEqualTo("Brass and iron hooks changed Brass hooks, $90.00 $130.00"))
                .anySatisfy(row -> assertThat(row).contains("Two more hooks added", "$34.00"))
                .anySatisfy(row -> assertThat(row).isEqualTo("Oak top dropped $200.00"))
                .anySatisfy(row -> assertThat(row).isEqualTo("Slate top added $400.00"))
                .noneSatisfy(row -> assertThat(row).contains("Lamp"));

        String client = Jsoup.parse(mvc.perform(get("/c/" + links.make(job.id(), "Orrin", 90, ada.personId())))
                        .andExpect(status().isOk())
                        .andReturn()
                        .getResponse()
                        .getContentAsString())
                .select("details:has(summary:contains(changed since))")
                .text();
        assertThat(client)
                .contains("No longer: Brass hooks $90.00: Six, set by you.")
                .contains("New: Brass and iron hooks $130.00: Eight.")
                .contains("No longer: Oak top $200.00")
                .contains("New: Slate top $400.00")
                .doesNotContain("34.00")
                .doesNotContain("Lamp");
    }

    private static BidDifference.Named named(String name, String price) {
        return new BidDifference.Named(name, Money.of(price));
    }

    private UUID option(UUID id, @Nullable Integer version, String name, String words, UUID... held) {
        options.save(job.id(), new OptionDraft(id, version, name, words, "", Set.of(held)), ada.personId());
        return id;
    }

    private UUID optionOf(String name) {
        return jdbc.sql("select id from estimate_option where name = ?")
                .param(name)
                .query((row, n) -> row.getObject(1, UUID.class))
                .single();
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
