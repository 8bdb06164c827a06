package org.tallywright.past.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.estimates.EstimateLines;
import org.tallywright.estimates.MaterialDraft;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.past.SamplePast;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Money;
import org.tallywright.shared.NetQuantity;
import org.tallywright.web.SignedIn;

/** What the preview of a copy says beside a line. */
@AppTest
class CopyNotesWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePast sample;

    @Autowired
    SampleJobs jobs;

    @Autowired
    EstimateLines lines;

    SamplePast.Built built;
    UUID oakLine;

    @BeforeEach
    void estimateOakWithFreight() {
        built = sample.running();
        sample.price(built.seat().oak(), "10.00");
        oakLine = Ids.next();
        lines.save(
                built.seat().job().id(),
                new MaterialDraft(
                        oakLine,
                        null,
                        built.piece(),
                        built.seat().oak(),
                        NetQuantity.of("30"),
                        null,
                        null,
                        Money.of("23.75")),
                built.seat().owner().personId());
    }

    private Element preview(SignedIn who) throws Exception {
        JobRef into = jobs.lead(built.seat().owner(), "Seat for the library");
        return Jsoup.parse(mvc.perform(get("/jobs/" + into.number() + "/past-pieces/" + built.piece())
                                .with(signedIn(who)))
                        .andExpect(status().isOk())
                        .andReturn()
                        .getResponse()
                        .getContentAsString())
                .selectFirst("main");
    }

    private static String beside(Element page, UUID line) {
        return page.selectFirst("label[for=take-" + line + "] small").text();
    }

    @Test
    void saysThatFreightStaysBehindAndToTheOwnerHowMuchItWas() throws Exception {
        assertThat(beside(preview(built.seat().owner()), oakLine))
                .contains("its freight stays behind", "freight was estimated at $23.75");
        Element seen = preview(built.seat().lead());
        assertThat(beside(seen, oakLine)).contains("its freight stays behind");
        assertThat(seen.html()).doesNotContain("23.75");
    }
}
