package org.tallywright.materials.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.jobs.Closing;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The four forms of material: what they keep, what they refuse, and who may use them. */
@AppTest
class MovementWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SamplePeople people;

    @Autowired
    JobDesk desk;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;
    JobRef job;
    UUID oak;

    @BeforeEach
    void runningJob() {
        ada = people.owner();
        job = jobs.running(ada, "Window seat");
        oak = material("red_oak", "Red oak, 5/4");
    }

    private UUID material(String code, String name) {
        UUID id = Ids.next();
        jdbc.sql("insert into material (id, code, name, unit, starting_yield, stocked, version)"
                        + " values (?, ?, ?, 'bf', 0.6, true, 0)")
                .params(id, code, name)
                .update();
        return id;
    }

    /** What each form holds when all is right. */
    private Map<String, String> form(String kind) {
        Map<String, String> form = new LinkedHashMap<>();
        form.put("id", Ids.next().toString());
        form.put("material", oak.toString());
        form.put("job", job.number());
        form.put("on", "2026-11-24");
        form.put("quantity", "50");
        form.put("note", "");
        switch (kind) {
            case "purchases" -> {
                form.put("price", "11");
                form.put("freight", "25.00");
                form.put("supplier", "Fallow and Creek Boards");
                form.put("receipt", "R-4115");
            }
            case "uses" -> {
                form.put("net", "33");
                form.put("source", "job");
            }
            case "returns" -> form.put("credit", "20");
            default -> {
                form.put("credit", "20");
                form.put("size", "two boards 5 x 48");
            }
        }
        return form;
    }

    private Map<String, String> with(Map<String, String> form, String field, String value) {
        form.put(field, value);
        return form;
    }

    private static MockHttpServletRequestBuilder send(String path, Map<String, String> form) {
        MockHttpServletRequestBuilder request = post(path);
        form.forEach(request::param);
        return request;
    }

    private void saved(String kind, Map<String, String> form) throws Exception {
        mvc.perform(send("/materials/" + kind, form).with(signedIn(ada)).with(csrf()))
                .andExpect(redirectedUrl("/jobs/" + job.number() + "/materials"));
    }

    private Document answer(MockHttpServletRequestBuilder request, SignedIn me, int status) throws Exception {
        return Jsoup.parse(mvc.perform(request.with(signedIn(me)).with(csrf()))
                .andExpect(status().is(status))
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private int count(String table) {
        return jdbc.sql("select count(*) from " + table).query(Integer.class).single();
    }

    private BigDecimal amount(String sql) {
        return jdbc.sql(sql).query(BigDecimal.class).single();
    }

    @ParameterizedTest
    @CsvSource({"purchases,purchase", "uses,material_use", "returns,material_return", "offcuts,offcut"})
    void keepsOneHoweverOftenItIsSent(String kind, String table) throws Exception {
        if (kind.equals("returns") || kind.equals("offcuts")) {
            saved("purchases", with(form("purchases"), "quantity", "60"));
        }
        Map<String, String> form = form(kind);
        saved(kind, form);
        saved(kind, form);
        assertThat(count(table)).isEqualTo(1);
        assertThat(answer(get("/jobs/26-001/materials"), ada, 200).text()).contains("Red oak, 5/4", "50 bf");
        assertThat(answer(get("/materials/" + kind), ada, 200).text()).contains("Red oak, 5/4", "26-001");
    }

    @Test
    void addsFreightToWhatAPurchaseCost() throws Exception {
        saved("purchases", form("purchases"));
        assertThat(amount("select amount from purchase")).isEqualByComparingTo("575.00");
        assertThat(answer(get("/materials/purchases"), ada, 200).text()).contains("$11.00", "$575.00", "R-4115");
    }

    @ParameterizedTest
    @CsvSource({
        "purchases,quantity,0",
        "purchases,quantity,-5",
        "purchases,quantity,lots",
        "purchases,quantity,9999999",
        "purchases,price,-1",
        "purchases,price,cheap",
        "purchases,freight,-2",
        "purchases,material,",
        "purchases,material,00000000-0000-0000-0000-000000000000",
        "purchases,job,26-999",
        "purchases,on,2026-11-26",
        "purchases,on,1999-01-01",
        "purchases,on,yesterday",
        "uses,net,51",
        "uses,net,-1",
        "uses,job,",
        "returns,credit,-1",
        "returns,credit,",
        "returns,quantity,51",
        "offcuts,quantity,51",
        "offcuts,credit,1000001"
    })
    void refusesBesideTheFieldAndKeepsWhatWasTyped(String kind, String field, String value) throws Exception {
        if (kind.equals("returns") || kind.equals("offcuts")) {
            saved("purchases", form("purchases"));
        }
        String typed = value == null ? "" : value;
        Document again = answer(send("/materials/" + kind, with(form(kind), field, typed)), ada, 422);
        assertThat(again.select("#" + field + "-error").text()).isNotEmpty();
        if (!field.equals("material") && !field.equals("job")) {
            assertThat(again.select("#" + field).val()).isEqualTo(typed);
        }
        if (!field.equals("quantity")) {
            assertThat(again.select("#quantity").val()).isEqualTo("50");
        }
        assertThat(count("material_use") + count("material_return") + count("offcut"))
                .isZero();
    }

    @ParameterizedTest
    @ValueSource(strings = {"supplier", "receipt", "note"})
    void refusesMoreTextThanFits(String field) throws Exception {
        Document again =
                answer(send("/materials/purchases", with(form("purchases"), field, "x".repeat(400))), ada, 422);
        assertThat(again.select("#" + field + "-error").text()).isNotEmpty();
        assertThat(again.select("#" + field).val()).hasSize(400);
    }

    @Test
    void refusesAnAmountThatNoShopSpends() throws Exception {
        Map<String, String> form = with(with(form("purchases"), "quantity", "1000000"), "price", "1000000");
        Document again = answer(send("/materials/purchases", form), ada, 422);
        assertThat(again.text()).contains("more money than can be kept here");
        assertThat(count("purchase")).isZero();
    }

    @Test
    void aClosedJobTakesNoMaterialButItsOffcutsAreUsedUp() throws Exception {
        saved("purchases", with(form("purchases"), "quantity", "60"));
        Map<String, String> kept = form("offcuts");
        saved("offcuts", kept);
        desk.close(job.id(), Closing.PLAIN, ada.personId());
        Document refused = answer(send("/materials/purchases", form("purchases")), ada, 422);
        assertThat(refused.text()).contains("closed");
        String offcut = "/materials/offcuts/" + kept.get("id");
        answer(post(offcut + "/removal"), ada, 422);
        assertThat(answer(get("/materials/offcuts"), ada, 200).select("form[action='" + offcut + "/usage']"))
                .hasSize(1);
        mvc.perform(post(offcut + "/usage").with(signedIn(ada)).with(csrf()))
                .andExpect(redirectedUrl("/materials/offcuts"));
        mvc.perform(post(offcut + "/usage").with(signedIn(ada)).with(csrf()))
                .andExpect(redirectedUrl("/materials/offcuts"));
        assertThat(jdbc.sql("select gone_on::text from offcut")
                        .query(String.class)
                        .single())
                .isEqualTo("2026-11-25");
        assertThat(answer(get("/materials/offcuts"), ada, 200).text()).contains("used up");
        answer(post("/materials/offcuts/" + Ids.next() + "/usage"), ada, 404);
        answer(post("/materials/purchases/" + Ids.next() + "/usage"), ada, 404);
    }

    @Test
    void correctsAtTheVersionReadAndShowsBothVersionsOtherwise() throws Exception {
        Map<String, String> form = form("purchases");
        saved("purchases", form);
        String path = "/materials/purchases/" + form.get("id");
        assertThat(answer(get(path), ada, 200).select("#receipt").val()).isEqualTo("R-4115");
        mvc.perform(send(path, with(with(form, "version", "0"), "receipt", "R-4116"))
                        .with(signedIn(ada))
                        .with(csrf()))
                .andExpect(redirectedUrl("/jobs/26-001/materials"));
        Document stale = answer(send(path, with(form, "receipt", "R-4117")), ada, 409);
        assertThat(stale.text()).contains("R-4116", "R-4117");
        assertThat(jdbc.sql("select receipt_number from purchase")
                        .query(String.class)
                        .single())
                .isEqualTo("R-4116");
        answer(get("/materials/purchases/" + Ids.next()), ada, 404);
        answer(send("/materials/purchases/" + Ids.next(), form), ada, 404);
        answer(get("/materials/purchases/not-an-id"), ada, 404);
        answer(get("/materials/uses/" + form.get("id")), ada, 404);
        answer(post(path + "/removal"), ada, 302);
        assertThat(count("purchase")).isZero();
        answer(post(path + "/removal"), ada, 404);
    }

    /** Stock keeps the price of the day it was taken; the catalogue's in force, else what was last paid. */
    @Test
    void keepsThePriceOfStockWhenOnlyTheNetIsCorrected() throws Exception {
        Map<String, String> bought = with(form("purchases"), "job", "");
        mvc.perform(send("/materials/purchases", bought).with(signedIn(ada)).with(csrf()))
                .andExpect(redirectedUrl("/materials/purchases"));
        Map<String, String> taken = with(with(with(form("uses"), "source", "stock"), "quantity", "10"), "net", "");
        saved("uses", taken);
        assertThat(amount("select unit_price from material_use")).isEqualByComparingTo("11");
        people.asShop(() -> jdbc.sql(
                        "insert into material_price (material_id, from_date, unit_price) values (?, '2026-01-01', 99)")
                .param(oak)
                .update());
        String path = "/materials/uses/" + taken.get("id");
        answer(send(path, with(with(taken, "version", "0"), "net", "6")), ada, 302);
        assertThat(amount("select unit_price from material_use")).isEqualByComparingTo("11");
        answer(send(path, with(with(taken, "version", "1"), "on", "2026-11-23")), ada, 302);
        assertThat(amount("select unit_price from material_use")).isEqualByComparingTo("99");
        assertThat(answer(get("/materials/stock"), ada, 200).text()).contains("40 bf");
    }

    @Test
    void showsWhatAMaterialCostPurchaseByPurchase() throws Exception {
        saved("purchases", with(form("purchases"), "on", "2026-10-01"));
        saved("purchases", with(form("purchases"), "price", "12.10"));
        Document page = answer(get("/materials/prices/" + oak), ada, 200);
        assertThat(page.text()).contains("Lowest $11.00, middle $11.00, highest $12.10, over 2 purchases", "+10 %");
        answer(get("/materials/prices/" + Ids.next()), ada, 404);
    }

    @Test
    void aHelperTakesMaterialAndSeesNoPrice() throws Exception {
        SignedIn helper = people.helper();
        saved("purchases", with(form("purchases"), "price", "41.17"));
        Map<String, String> taken = form("uses");
        mvc.perform(send("/materials/uses", taken).with(signedIn(helper)).with(csrf()))
                .andExpect(redirectedUrl("/jobs/26-001/materials"));
        Document page = answer(get("/jobs/26-001/materials"), helper, 200);
        assertThat(page.text()).contains("Red oak, 5/4", "50 bf").doesNotContain("$");
        assertThat(page.html()).doesNotContain("41.17", "2,083.50", "2083.5", "R-4115", "Purchases");
        assertThat(answer(get("/materials/uses/new?job=26-001"), helper, 200).html())
                .doesNotContain("41.17", "Unit price");
        for (String kind : new String[] {"purchases", "returns", "offcuts"}) {
            answer(get("/materials/" + kind + "/new"), helper, 403);
            answer(send("/materials/" + kind, form(kind)), helper, 403);
        }
        answer(get("/materials/uses"), helper, 403);
        answer(get("/materials/prices/" + oak), helper, 403);
        answer(get("/materials/uses/" + taken.get("id")), helper, 403);
        // Not through the form for new entries either.
        answer(send("/materials/uses", with(with(taken, "version", "0"), "quantity", "40")), helper, 409);
        assertThat(amount("select quantity from material_use")).isEqualByComparingTo("50");
    }

    @Test
    void isNothingForTheBookkeeper() throws Exception {
        SignedIn bookkeeper = people.person("Mirel Oake", Role.BOOKKEEPER);
        answer(get("/materials/purchases"), bookkeeper, 403);
        answer(get("/jobs/26-001/materials"), bookkeeper, 403);
        answer(send("/materials/purchases", form("purchases")), bookkeeper, 403);
    }

    @Test
    void theLeadBuysAndSeesPricesButNoMargin() throws Exception {
        SignedIn lead = people.lead();
        mvc.perform(send("/materials/purchases", form("purchases"))
                        .with(signedIn(lead))
                        .with(csrf()))
                .andExpect(redirectedUrl("/jobs/26-001/materials"));
        assertThat(answer(get("/jobs/26-001/materials"), lead, 200).text())
                .contains("$575.00")
                .doesNotContain("Margin");
    }
}
