package org.tallywright.estimates.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

@AppTest
class EstimateWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SampleEstimates sample;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;
    JobRef job;
    String base;

    @BeforeEach
    void bid() {
        ada = people.owner();
        job = sample.windowSeat(ada);
        base = "/jobs/" + job.number() + "/estimate";
    }

    @Test
    void opensEachFigureOfThePriceToItsFormula() throws Exception {
        Document page = page(ada, base);

        assertThat(page.select(".rung.price .rung-value").eachText()).containsExactly("$1,260.00");
        assertThat(page.select(".rung").text())
                .contains("6 h 30 x $49.40")
                .contains("White oak, rough: 27 bf net / 0.6, buys 45 at $13.40")
                .contains("Delivery $45.50")
                .contains("/ (1 - 15 %)");
        assertThat(page.text())
                .contains("Not among the lines:")
                .contains("touch-up")
                .doesNotContain("lines: travel");
    }

    @Test
    void givesTheLeadHoursAndMaterialButNothingOfTheMoney() throws Exception {
        SignedIn lead = people.lead();
        sample.issued(job, ada);
        String html = html(lead, base, 200);

        assertThat(html).contains("6 h 30").contains("0.015").contains("$13.40").contains("$603.00");
        assertThat(html)
                .doesNotContain("41.17")
                .doesNotContain("49.40")
                .doesNotContain("321.10")
                .doesNotContain("97.50")
                .doesNotContain("45.50")
                .doesNotContain("1,260")
                .doesNotContain("1,067.10")
                .doesNotContainIgnoringCase("margin")
                .doesNotContainIgnoringCase("overhead")
                .doesNotContainIgnoringCase("/bids")
                .doesNotContain(job.number() + " A");
    }

    @Test
    void isNotForHelperOrBookkeeper() throws Exception {
        for (SignedIn one : new SignedIn[] {people.helper(), people.bookkeeper()}) {
            for (String path : new String[] {"", "/rates", "/materials/new", "/tasks/new"}) {
                String html = html(one, base + path, 403);
                assertThat(html)
                        .doesNotContain("6 h 30")
                        .doesNotContain("603.00")
                        .doesNotContain("49.40");
            }
        }
        SignedIn lead = people.lead();
        for (String path : new String[] {"/rates", "/others/new"}) {
            html(lead, base + path, 403);
        }
    }

    @Test
    void takesAMaterialLineWithTheCataloguesYieldAndPrice() throws Exception {
        UUID ply = sample.material("maple_ply", "Maple plywood", "sheet", "0.82", "109.09");
        UUID id = Ids.next();
        MockHttpServletRequestBuilder form = post(base + "/materials")
                .param("id", id.toString())
                .param("material", ply.toString())
                .param("net", "9.6")
                .param("freight", "40");

        send(form, people.lead()).andExpect(status().is3xxRedirection());
        send(form, people.lead()).andExpect(status().is3xxRedirection());

        assertThat(one("select purchase_quantity || ' ' || amount from estimate_material where id = ?", id))
                .isEqualTo("12.0000 1349.08");
        assertThat(jdbc.sql("select count(*) from estimate_material where job_id = ?")
                        .param(job.id())
                        .query(Integer.class)
                        .single())
                .isEqualTo(2);
    }

    @Test
    void keepsWhatWasTypedBesideEachRefusal() throws Exception {
        MockHttpServletRequestBuilder form = post(base + "/materials")
                .param("id", Ids.next().toString())
                .param("material", "no such thing")
                .param("net", "a few")
                .param("yield", "1.2 %%")
                .param("price", "13.40");
        Document page = Jsoup.parse(body(send(form, ada).andExpect(status().isUnprocessableContent())));

        assertThat(page.select("#net").val()).isEqualTo("a few");
        assertThat(page.select("#yield").val()).isEqualTo("1.2 %%");
        assertThat(page.select("#price").val()).isEqualTo("13.40");
        assertThat(page.select("#net-error, #yield-error, #material + .error, .refused .error")
                        .size())
                .isGreaterThanOrEqualTo(3);
    }

    @Test
    void refusesFiguresOutOfAllMeasure() throws Exception {
        UUID oak = UUID.fromString(one("select id::text from material where code = ?", "white_oak"));
        for (String net : new String[] {"0", "-4", "99999999", "1e9", "\uD83E\uDEB5", "\u0000"}) {
            MockHttpServletRequestBuilder form = post(base + "/materials")
                    .param("id", Ids.next().toString())
                    .param("material", oak.toString())
                    .param("net", net);
            send(form, ada).andExpect(status().isUnprocessableContent());
        }
        for (String margin : new String[] {"100", "99.9999", "-1", "", "x"}) {
            send(rates().param("margin", margin), ada).andExpect(status().isUnprocessableContent());
        }
        send(
                        post(base + "/others")
                                .param("id", Ids.next().toString())
                                .param("description", "x".repeat(161))
                                .param("amount", "12"),
                        ada)
                .andExpect(status().isUnprocessableContent());
        send(
                        post(base + "/others")
                                .param("id", "not an id")
                                .param("description", "Lift")
                                .param("amount", "12"),
                        ada)
                .andExpect(status().is4xxClientError());
    }

    @Test
    void showsBothVersionsWhenAnotherWasFaster() throws Exception {
        UUID line = sample.other(job, "Hired lift", "120.00", ada);
        MockHttpServletRequestBuilder first = other(line, "0", "Hired lift", "140.00");
        MockHttpServletRequestBuilder second = other(line, "0", "Hired lift", "160.00");

        send(first, ada).andExpect(status().is3xxRedirection());
        String conflict = body(send(second, ada).andExpect(status().isConflict()));

        assertThat(conflict).contains("140.00").contains("160.00");
        assertThat(one("select amount::text from estimate_other where id = ?", line))
                .isEqualTo("140.00");
        send(first, ada).andExpect(status().is3xxRedirection());
    }

    @Test
    void showsBothVersionsOfATaskLine() throws Exception {
        UUID task = UUID.fromString(one("select id::text from task where name = ?", "Rip hardwood"));
        send(task(task, "120"), ada).andExpect(status().is3xxRedirection());
        Document conflict = Jsoup.parse(body(send(task(task, "140"), ada).andExpect(status().isConflict())));

        assertThat(conflict.select("tbody tr").eachText()).contains("Quantity 120 140", "Hours per unit 0.02 0.02");
        assertThat(one("select quantity::text from task where id = ?", task)).isEqualTo("120.0000");
    }

    private MockHttpServletRequestBuilder task(UUID task, String quantity) {
        return post(base + "/tasks")
                .param("id", task.toString())
                .param("version", "0")
                .param("taskKind", one("select task_kind_id::text from task where id = ?", task))
                .param("quantity", quantity)
                .param("unitHours", "0.02");
    }

    @Test
    void saysWhyAFormWithoutItsIdIsNotTaken() throws Exception {
        String oak = one("select id::text from material where code = ?", "white_oak");
        String kind = one("select task_kind_id::text from task where name = ?", "Rip hardwood");
        MockHttpServletRequestBuilder[] forms = {
            post(base + "/tasks").param("taskKind", kind).param("quantity", "12"),
            post(base + "/materials").param("material", oak).param("net", "4"),
            post(base + "/others").param("description", "Lift").param("amount", "12"),
            post("/jobs/" + job.number() + "/bids")
                    .param("title", "Window seat")
                    .param("validDays", "30")
                    .param("seen", "1260.00")
        };
        for (MockHttpServletRequestBuilder form : forms) {
            Document again = Jsoup.parse(body(send(form, ada).andExpect(status().isUnprocessableContent())));
            assertThat(again.select(".summary").text()).contains("The form did not arrive whole.");
        }
    }

    @Test
    void doesNotTouchLinesOfAnotherJob() throws Exception {
        JobRef other = jobs.lead(ada, "Pantry");
        UUID line = sample.other(other, "Disposal", "77.00", ada);
        UUID piece = jobs.piece(other, "Pantry case", "30", "80", "12", ada);

        send(other(line, "0", "Disposal", "1.00"), ada).andExpect(status().isNotFound());
        send(post(base + "/others/" + line + "/removal"), ada).andExpect(status().isNotFound());
        for (String part : new String[] {"others", "materials"}) {
            send(post(base + "/" + part + "/" + Ids.next() + "/removal"), ada).andExpect(status().isNotFound());
        }
        mvc.perform(get(base + "/others/" + line).with(signedIn(ada))).andExpect(status().isNotFound());
        send(
                        post(base + "/materials")
                                .param("id", Ids.next().toString())
                                .param("material", one("select id::text from material where code = ?", "white_oak"))
                                .param("piece", piece.toString())
                                .param("net", "4"),
                        ada)
                .andExpect(status().isUnprocessableContent());
        assertThat(one("select amount::text from estimate_other where id = ?", line))
                .isEqualTo("77.00");
    }

    @Test
    void adjustsARateBesideTheStartingOneAndLeavesTasksOut() throws Exception {
        UUID task = UUID.fromString(one("select id::text from task where name = ?", "Rip hardwood"));
        send(
                        post(base + "/tasks")
                                .param("id", task.toString())
                                .param("version", "0")
                                .param("taskKind", one("select task_kind_id::text from task where id = ?", task))
                                .param("quantity", "120")
                                .param("unitHours", "0.02"),
                        ada)
                .andExpect(status().is3xxRedirection());

        assertThat(page(ada, base).select("#tasks").text()).contains("120 lf").contains("0.02 h book 0.015");
        send(post(base + "/tasks/" + task + "/dropping"), ada).andExpect(status().is3xxRedirection());
        assertThat(page(ada, base).select("#tasks").text()).doesNotContain("Rip hardwood");
    }

    @Test
    void mixesTheRateFromSharesThatAddUpToAHundred() throws Exception {
        SignedIn jonas = people.helper();
        people.paid(jonas, java.time.LocalDate.of(2026, 1, 1), "20.00", "22");
        String share = "shares[" + jonas.personId() + "]";
        String own = "shares[" + ada.personId() + "]";

        String refused = body(
                send(rates().param(own, "75").param(share, "20"), ada).andExpect(status().isUnprocessableContent()));
        assertThat(refused).contains("add up to 95 %").contains("value=\"75\"");
        send(rates().param(own, "75").param(share, "25"), ada).andExpect(status().is3xxRedirection());

        // 0.75 x 49.40 + 0.25 x 24.40 = 43.15
        assertThat(page(ada, base).select(".rung").text())
                .contains("6 h 30 x $43.15")
                .contains("Jonas Pell, 25 %");
    }

    /** 48.00 x 1.25; dated by the shop, but the price is that of today. */
    @Test
    void saysFromWhenAnHourWillCostMore() throws Exception {
        people.paid(ada, java.time.LocalDate.of(2027, 2, 1), "50.00", "25");
        people.paid(ada, java.time.LocalDate.of(2027, 1, 4), "48.00", "25");

        assertThat(page(ada, base + "/rates").text())
                .contains("$49.40 an hour with burden; $60.00 from 4 January 2027, not counted here");
        assertThat(page(ada, base).select(".rung").text()).contains("6 h 30 x $49.40");
    }

    @Test
    void saysWhatIsMissingForAPrice() throws Exception {
        SignedIn jonas = people.helper();
        send(rates().param("shares[" + jonas.personId() + "]", "100"), ada).andExpect(status().is3xxRedirection());
        assertThat(page(ada, base).select("#price").text()).contains("No wage is known today for Jonas Pell");

        send(rates(), ada).andExpect(status().is3xxRedirection());
        Document page = page(ada, base);
        assertThat(page.select("#price").text()).contains("no rate for the hours");
        assertThat(page.select("#price .button").text()).doesNotContain("issue");
    }

    private MockHttpServletRequestBuilder rates() {
        return post(base + "/rates")
                .param(
                        "version",
                        one("select coalesce(max(version), 0)::text from estimate where job_id = ?", job.id()))
                .param("overheadRate", "15")
                .param("contingency", "5")
                .param("contingencyName", "old house")
                .param("roundingStep", "10")
                .param("tax", "0")
                .param("margin", "15");
    }

    private MockHttpServletRequestBuilder other(UUID id, String version, String what, String amount) {
        return post(base + "/others")
                .param("id", id.toString())
                .param("version", version)
                .param("description", what)
                .param("amount", amount);
    }

    private String one(String sql, Object param) {
        return jdbc.sql(sql).param(param).query(String.class).single();
    }

    private ResultActions send(MockHttpServletRequestBuilder form, SignedIn me) throws Exception {
        return mvc.perform(form.with(signedIn(me)).with(csrf()));
    }

    private Document page(SignedIn me, String path) throws Exception {
        return Jsoup.parse(html(me, path, 200));
    }

    private String html(SignedIn me, String path, int status) throws Exception {
        return body(mvc.perform(get(path).with(signedIn(me))).andExpect(status().is(status)));
    }

    private static String body(ResultActions actions) throws Exception {
        MvcResult result = actions.andReturn();
        return result.getResponse().getContentAsString();
    }
}
