package org.tallywright.estimates.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.Duration;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.estimates.BidDesk;
import org.tallywright.estimates.BidWords;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.ClientYes;
import org.tallywright.estimates.IssueBid;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.estimates.print.Pdf;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.sharing.ClientLinks;
import org.tallywright.web.SignedIn;

/** The paper as a file: read as text, drawn as a picture, and never with what is not the client's. */
@AppTest
class BidPdfWebTest {
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
    ClientLinks links;

    @Autowired
    TestClock clock;

    @Autowired
    Everything everything;

    SignedIn ada;
    JobRef job;
    UUID bid;

    @BeforeEach
    void bid() {
        ada = people.owner();
        job = sample.windowSeat(ada);
        bid = sample.issued(job, ada);
    }

    @Test
    void readsAsThePaper() throws Exception {
        mvc.perform(get("/bids/" + bid + "/paper.pdf").with(signedIn(ada)))
                .andExpect(status().isOk())
                .andExpect(header().string("Content-Type", "application/pdf"))
                .andExpect(header().string("Content-Disposition", "inline; filename=\"" + job.number() + "-A.pdf\""));
        Pdf pdf = new Pdf(bytes());

        assertThat(pdf.pages()).isOne();
        assertThat(pdf.title()).isEqualTo("Bid " + job.number() + " A, Window seat in white oak");
        assertThat(pdf.language()).isEqualTo("en");
        assertThat(pdf.width()).isEqualTo(612);
        assertThat(pdf.text())
                .contains("Bid " + job.number() + " A")
                .contains("Fenn Joinery")
                .contains("Orrin Baskwell")
                .contains("Issued 25 November 2026")
                .contains("Valid until 25 December 2026")
                .contains("Build and install one window seat.")
                .contains("Window seat 1 5' 1 3/8\" wide, 1' 6\" high, 1' 3\" deep")
                .contains("Painting")
                .contains("Price $1,260.00")
                .contains("Half to book.")
                .contains("Signature")
                .contains("Local law decides")
                .contains("Page 1 of 1");
    }

    @Test
    void showsThePriceAtTheRightEdgeOfItsLine() throws Exception {
        Pdf pdf = new Pdf(bytes());
        Pdf.Word price = pdf.words(1).stream()
                .filter(word -> word.text().contains("$1,260.00"))
                .findFirst()
                .orElseThrow();

        assertThat(price.right()).isBetween(557f, 558.5f);
        var picture = pdf.picture(1);
        assertThat(Pdf.ink(picture, price.right() - 44, price.baseline() - 8, price.right(), price.baseline()))
                .isGreaterThan(0.15);
        // Nothing is drawn in the margins, and the rule below the price is not through it.
        assertThat(Pdf.ink(picture, 560, 0, 612, 792)).isZero();
        assertThat(Pdf.ink(picture, 0, 0, 52, 792)).isZero();
        assertThat(Pdf.ink(picture, 300, price.baseline() - 6, 480, price.baseline() - 1))
                .isZero();
    }

    @Test
    void isTheSameToTheByteAfterEverythingHasChanged() throws Exception {
        byte[] before = bytes();

        clock.advance(Duration.ofDays(400));
        everything.changes(ada);

        assertThat(bytes()).isEqualTo(before);
    }

    @Test
    void isTheSameWhatBecameOfIt() throws Exception {
        byte[] before = bytes();

        bids.acceptByLink(bid, job.id(), new ClientYes("Orrin Baskwell", Set.of(), ""));

        assertThat(bytes()).isEqualTo(before);
    }

    @Test
    void holdsNoHoursNoCostAndNoRate() throws Exception {
        String all = new Pdf(bytes()).text() + new String(bytes(), java.nio.charset.StandardCharsets.ISO_8859_1);

        assertThat(all)
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
    void isTheClientsByHisLinkAndNobodyElses() throws Exception {
        String token = links.make(job.id(), "Orrin", 30, ada.personId());
        String address = "/c/" + token + "/bids/" + bid + "/paper.pdf";

        MockHttpServletResponse answer = mvc.perform(get(address))
                .andExpect(status().isOk())
                .andExpect(header().string("Cache-Control", "no-store"))
                .andReturn()
                .getResponse();
        assertThat(answer.getContentAsByteArray()).isEqualTo(bytes());

        String other = links.make(jobs.lead(ada, "Pantry").id(), "Somebody", 30, ada.personId());
        mvc.perform(get("/c/" + other + "/bids/" + bid + "/paper.pdf")).andExpect(status().isNotFound());
        mvc.perform(get("/c/nothing/bids/" + bid + "/paper.pdf")).andExpect(status().isNotFound());
        desk.withdraw(bid, ada.personId());
        mvc.perform(get(address)).andExpect(status().isNotFound());
        for (SignedIn one : new SignedIn[] {people.lead(), people.helper(), people.bookkeeper()}) {
            mvc.perform(get("/bids/" + bid + "/paper.pdf").with(signedIn(one))).andExpect(status().isForbidden());
        }
        mvc.perform(get("/bids/" + Ids.next() + "/paper.pdf").with(signedIn(ada)))
                .andExpect(status().isNotFound());
    }

    @Test
    void saysInWordsWhichSignsItCannotShowAndLeavesThePage() throws Exception {
        IssueBid usual = sample.said(Ids.next(), job, "Window seat");
        IssueBid said = new IssueBid(
                usual.id(),
                usual.version(),
                "Fenstersitz 木",
                new BidWords("Ж, Σ and ½", "", "", ""),
                30,
                0,
                usual.seenTotal());
        desk.issue(job.id(), said, ada.personId());

        String page = mvc.perform(get("/bids/" + said.id() + "/paper.pdf").with(signedIn(ada)))
                .andExpect(status().isUnprocessableContent())
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(page).contains("The PDF cannot show 木").contains("Ж, Σ and ½");
    }

    private byte[] bytes() throws Exception {
        return mvc.perform(get("/bids/" + bid + "/paper.pdf").with(signedIn(ada)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsByteArray();
    }
}
