package org.tallywright.estimates.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.LocalDate;
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
import org.tallywright.estimates.EstimatePricer;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobRef;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

@AppTest
class WhatIfWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleEstimates sample;

    @Autowired
    EstimatePricer pricer;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;
    SignedIn jonas;
    JobRef job;
    String address;

    @BeforeEach
    void bid() {
        ada = people.owner();
        jonas = people.helper();
        job = sample.windowSeat(ada);
        address = "/jobs/" + job.number() + "/estimate/what-if";
    }

    @Test
    void standsOnTheEstimateBesideNothingElse() throws Exception {
        Document page = page(ada, get("/jobs/" + job.number() + "/estimate"), 200);

        assertThat(page.select("#what-if tbody th").eachText())
                .containsExactly(
                        "Price",
                        "Expected cost",
                        "Cost, 80 % range",
                        "Expected profit",
                        "Loses money",
                        "An hour costs");
        assertThat(page.select("#what-if-figures > p").text()).startsWith("No finished job stands behind this yet");
        assertThat(page.select("#what-if tbody tr").first().text()).isEqualTo("Price $1,260.00");
        assertThat(page.select("#what-if form[method=post]")).isEmpty();
    }

    @Test
    void showsAnotherMarginBesideTheOneThatStandsAndKeepsNothing() throws Exception {
        String before = kept();
        Document page = page(ada, get(address).param("margin", "40"), 200);

        // 1,067.10 / .6 = 1,778.50, to the nearest ten.
        assertThat(page.select("#what-if tbody tr").first().select("td").eachText())
                .containsExactly("$1,260.00", "$1,780.00");
        assertThat(page.select(".rung.price .rung-value").eachText()).containsExactly("$1,780.00");
        assertThat(page.select("input[name=margin]").first().val()).isEqualTo("40");
        assertThat(kept()).isEqualTo(before);
    }

    @Test
    void aDearerPriceLosesLessOften() throws Exception {
        Document page = page(ada, get(address).param("margin", "80"), 200);
        var loses = page.select("#what-if tbody tr:contains(Loses money) td").eachText();
        assertThat(loses.get(0)).startsWith("about ");
        // Which draws are made hangs on the tasks' ids, so the exact share does too.
        assertThat(hundredths(loses.get(1))).isLessThan(5).isLessThan(hundredths(loses.get(0)));
    }

    @Test
    void pricesTheHoursOfAnotherCrewAndTakesItOver() throws Exception {
        people.paid(jonas, LocalDate.of(2026, 1, 1), "20.00", "22");
        Document page = page(ada, get(address).param("crew", ada.personId() + "+" + jonas.personId()), 200);
        // (49.40 + 24.40) / 2
        assertThat(page.select("#what-if tbody tr:contains(An hour costs) td").eachText())
                .containsExactly("$49.40", "$36.90");
        String price =
                page.select("#what-if tbody tr").first().select("td").get(1).text();

        MockHttpServletRequestBuilder take = post(address);
        page.select("#what-if-figures form input[type=hidden]").forEach(box -> take.param(box.attr("name"), box.val()));
        ask(ada, take).andExpect(status().isFound());
        Document now = page(ada, get("/jobs/" + job.number() + "/estimate"), 200);
        assertThat(now.select("#what-if tbody tr").first().select("td").text()).isEqualTo(price);
        assertThat(pricer.of(job.id()).labourRate().amount().orElseThrow()).hasToString("36.90");
    }

    @Test
    void takesTheConfidenceOverToo() throws Exception {
        Document page = page(ada, get(address).param("confidence", "90").param("margin", "15"), 200);
        String price =
                page.select("#what-if tbody tr").first().select("td").get(1).text();
        ask(ada, post(address).param("confidence", "90").param("margin", "15").param("crew", "stands"))
                .andExpect(status().isFound());
        assertThat(pricer.of(job.id()).confidence()).contains(90);
        assertThat(page(ada, get(address), 200)
                        .select("#what-if tbody tr")
                        .first()
                        .select("td")
                        .text())
                .isEqualTo(price);
    }

    @Test
    void saysInWordsWhatCannotBeTried() throws Exception {
        assertThat(page(ada, get(address).param("margin", "plenty"), 422)
                        .select("#what-if .error")
                        .text())
                .isNotBlank();
        assertThat(page(ada, get(address).param("margin", "100"), 422)
                        .select(".error")
                        .text())
                .contains("below 100 %");
        assertThat(page(ada, get(address).param("margin", "-3"), 422)
                        .select(".error")
                        .text())
                .contains("is not a percentage");
        assertThat(page(ada, get(address).param("confidence", "95"), 422)
                        .select(".error")
                        .text())
                .contains("Choose one of the four.");
        for (String crew : new String[] {"x", ada.personId() + "+" + ada.personId(), "a+b+c"}) {
            page(ada, get(address).param("crew", crew), 422);
        }
        assertThat(page(ada, get(address).param("crew", jonas.personId().toString()), 200)
                        .text())
                .contains("No wage is known today for Jonas Pell.");
    }

    @Test
    void anotherVersionOfTheRatesIsNotWrittenOver() throws Exception {
        String hand = "update estimate set version = version + 1, margin_percent = 22 where job_id = ?";
        ask(ada, post(address).param("confidence", "0").param("margin", "30").param("crew", "stands"))
                .andExpect(status().isFound());
        people.asShop(() -> jdbc.sql(hand).param(job.id()).update());
        ask(
                        ada,
                        post(address)
                                .param("version", "0")
                                .param("confidence", "0")
                                .param("margin", "25")
                                .param("crew", "stands"))
                .andExpect(status().isConflict());
    }

    @Test
    void isTheOwnersAlone() throws Exception {
        for (SignedIn one : new SignedIn[] {people.lead(), jonas, people.bookkeeper()}) {
            assertThat(page(one, get(address).param("margin", "40"), 403).text())
                    .doesNotContain("1,780");
        }
        assertThat(page(people.lead(), get("/jobs/" + job.number() + "/estimate"), 200)
                        .select("#what-if"))
                .isEmpty();
    }

    private static int hundredths(String often) {
        return often.startsWith("fewer") ? 0 : Integer.parseInt(often.replaceAll("\\D*(\\d+) in 100", "$1"));
    }

    private String kept() {
        return jdbc.sql(
                        "select coalesce(string_agg(e::text, ';'), '') || (select count(*) from price_confidence) from estimate e")
                .query(String.class)
                .single();
    }

    private Document page(SignedIn who, MockHttpServletRequestBuilder request, int expected) throws Exception {
        return Jsoup.parse(ask(who, request)
                .andExpect(status().is(expected))
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private ResultActions ask(SignedIn who, MockHttpServletRequestBuilder request) throws Exception {
        return mvc.perform(request.with(signedIn(who)).with(csrf()));
    }
}
