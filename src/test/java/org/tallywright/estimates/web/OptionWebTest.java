package org.tallywright.estimates.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.util.Set;
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
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.estimates.print.Pdf;
import org.tallywright.jobs.JobRef;
import org.tallywright.people.SamplePeople;
import org.tallywright.sharing.ClientLinks;
import org.tallywright.web.SignedIn;

/** An option from the owner's form to the client's tick. */
@AppTest
class OptionWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleEstimates sample;

    @Autowired
    Bids bids;

    @Autowired
    ClientLinks links;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;
    JobRef job;
    UUID line;

    @BeforeEach
    void seatWithHooks() {
        ada = people.owner();
        job = sample.windowSeat(ada);
        line = sample.other(job, "Six hooks", "80.00", ada);
    }

    @Test
    void isTickedOnTheLinkAfterTheTotalWasShown() throws Exception {
        keep(blank(), "Brass hooks", "Six, set by you.", line.toString()).andExpect(status().is3xxRedirection());
        assertThat(page("/jobs/" + job.number() + "/estimate")
                        .select("#options")
                        .text())
                .contains("Brass hooks", "Six hooks, $80.00", "$90.00");
        assertThat(page("/jobs/" + job.number() + "/bids/new").text()).contains("Brass hooks $90.00");
        UUID bid = sample.issued(job, ada);
        UUID option = bids.paper(bid).options().get(0).id();
        String token = links.make(job.id(), "Orrin", 90, ada.personId());

        Document offer = client("/c/" + token);
        assertThat(offer.select("form[method=get] input[name=options]").val()).isEqualTo(option.toString());
        assertThat(offer.select("form[action$=/acceptance][method=post]")).isEmpty();
        Document choice = client("/c/" + token + "/bids/" + bid + "/acceptance?options=" + option);
        assertThat(choice.select("tfoot").text()).isEqualTo("In all $1,350.00");
        assertThat(client("/c/" + token + "/bids/" + bid + "/acceptance")
                        .select("tfoot")
                        .text())
                .isEqualTo("In all $1,260.00");
        assertThat(choice.text()).doesNotContain("80.00").doesNotContain("Six hooks");

        ResultActions nameless = accept(token, bid, "", option.toString());
        Document again = Jsoup.parse(nameless.andExpect(status().isUnprocessableContent())
                .andReturn()
                .getResponse()
                .getContentAsString());
        assertThat(again.select("input[name=options]").val()).isEqualTo(option.toString());
        assertThat(again.select(".error").text()).isEqualTo("Please fill this in.");
        accept(token, bid, "Orrin Baskwell", "nonsense").andExpect(status().isUnprocessableContent());
        accept(token, bid, "Orrin Baskwell", UUID.randomUUID().toString()).andExpect(status().isUnprocessableContent());
        accept(token, bid, "Orrin Baskwell", option.toString()).andExpect(redirectedUrl("/c/" + token + "?accepted"));
        accept(token, bid, "Orrin Baskwell", option.toString()).andExpect(redirectedUrl("/c/" + token + "?accepted"));
        String other = accept(token, bid, "Orrin Baskwell")
                .andExpect(status().isUnprocessableContent())
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(Jsoup.parse(other).text()).contains("accepted already, with other options");

        assertThat(client("/c/" + token).text())
                .contains("Option: Brass hooks $90.00 chosen")
                .contains("Agreed in all $1,350.00");
        assertThat(page("/bids/" + bid + "/sums").text())
                .contains("Brass hooks chosen")
                .contains("$1,350.00");
        assertThat(page("/jobs/" + job.number()).text()).contains("Bid A, accepted $1,350.00");
        mvc.perform(get("/c/" + token + "/bids/" + bid + "/acceptance")).andExpect(redirectedUrl("/c/" + token));
    }

    @Test
    void staysOnThePaperWhenItIsNotTaken() throws Exception {
        keep(blank(), "Brass hooks", "", line.toString());
        UUID bid = sample.issued(job, ada);
        bids.accept(bid, "Orrin", java.time.LocalDate.of(2026, 11, 25), Set.of(), ada.personId());

        assertThat(page("/bids/" + bid).text())
                .contains("Brass hooks not taken")
                .contains("Agreed in all $1,260.00");
        assertThat(page("/jobs/" + job.number() + "/estimate")
                        .select("#options")
                        .text())
                .contains("Brass hooks Not taken");
        assertThat(page("/jobs/" + job.number() + "/bids/new").text()).contains("There is nothing to issue yet");
    }

    @Test
    void isListedInThePdfWithAnEmptyBoxAndItsPrice() throws Exception {
        keep(blank(), "Brass hooks", "Six, set by you.", line.toString());
        UUID bid = sample.issued(job, ada);
        Pdf pdf = new Pdf(mvc.perform(get("/bids/" + bid + "/paper.pdf").with(signedIn(ada)))
                .andReturn()
                .getResponse()
                .getContentAsByteArray());

        assertThat(pdf.text())
                .contains("Price $1,260.00")
                .contains("Brass hooks $90.00")
                .contains("Six, set by you.")
                .doesNotContain("80.00")
                .doesNotContain("Six hooks");
        Pdf.Word price = pdf.words(1).stream()
                .filter(word -> word.text().equals("$90.00"))
                .findFirst()
                .orElseThrow();
        var picture = pdf.picture(1);
        assertThat(Pdf.ink(picture, 54, price.baseline() - 9.5f, 66, price.baseline() + 2))
                .isBetween(0.1, 0.5);
        assertThat(Pdf.ink(picture, 57, price.baseline() - 6.5f, 63, price.baseline() - 2))
                .isZero();
    }

    @Test
    void refusesInWordsAndKeepsWhatWasTyped() throws Exception {
        Document form = blank();
        Document nameless = refused(keep(form, " ", "Six.", line.toString()));
        assertThat(nameless.select(".error").text()).isEqualTo("Please fill this in.");
        assertThat(nameless.select("#line-" + line).hasAttr("checked")).isTrue();
        assertThat(refused(keep(form, "x".repeat(10_000), "", line.toString()))
                        .select(".error")
                        .text())
                .contains("9880 characters too long");
        assertThat(refused(keep(form, "Hooks", "x".repeat(10_000), line.toString()))
                        .select(".error")
                        .text())
                .contains("8000 characters too long");
        assertThat(refused(keep(form, "Hooks", "", "-1")).text()).contains("Pick one of the list.");
        assertThat(refused(keep(form, "Hooks", "", UUID.randomUUID().toString()))
                        .text())
                .contains("Pick lines of this estimate");
        assertThat(jdbc.sql("select count(*) from estimate_option")
                        .query(Integer.class)
                        .single())
                .isZero();
    }

    @Test
    void isTheOwnersAlone() throws Exception {
        keep(blank(), "Brass hooks", "", line.toString());
        UUID id = jdbc.sql("select id from estimate_option")
                .query((row, n) -> row.getObject(1, UUID.class))
                .single();
        for (SignedIn one : new SignedIn[] {people.lead(), people.helper(), people.bookkeeper()}) {
            mvc.perform(get("/jobs/" + job.number() + "/estimate/options/" + id).with(signedIn(one)))
                    .andExpect(status().isForbidden());
        }
        String lead = mvc.perform(get("/jobs/" + job.number() + "/estimate").with(signedIn(people.lead())))
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(lead).doesNotContain("$90.00").doesNotContain("$80.00");
    }

    private Document blank() throws Exception {
        return page("/jobs/" + job.number() + "/estimate/options/new");
    }

    private ResultActions keep(Document form, String name, String words, String... lines) throws Exception {
        return mvc.perform(post("/jobs/" + job.number() + "/estimate/options")
                .param("id", form.select("[name=id]").val())
                .param("version", "")
                .param("name", name)
                .param("words", words)
                .param("lines", lines)
                .with(signedIn(ada))
                .with(csrf()));
    }

    private ResultActions accept(String token, UUID bid, String name, String... options) throws Exception {
        MockHttpServletRequestBuilder yes =
                post("/c/" + token + "/bids/" + bid + "/acceptance").param("name", name);
        return mvc.perform((options.length == 0 ? yes : yes.param("options", options)).with(csrf()));
    }

    private static Document refused(ResultActions answer) throws Exception {
        return Jsoup.parse(answer.andExpect(status().isUnprocessableContent())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private Document page(String path) throws Exception {
        return Jsoup.parse(mvc.perform(get(path).with(signedIn(ada)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private Document client(String path) throws Exception {
        return Jsoup.parse(mvc.perform(get(path))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }
}
