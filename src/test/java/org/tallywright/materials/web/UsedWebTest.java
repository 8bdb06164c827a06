package org.tallywright.materials.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

/** Material in one line: seen in rows first, saved once, without a price on the page. */
@AppTest
class UsedWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SamplePeople people;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;
    SignedIn jonas;
    JobRef job;

    @BeforeEach
    void aRunningJobAndTwoMaterials() {
        ada = people.owner();
        jonas = people.helper();
        job = jobs.running(ada, "Window seat");
        material("Red oak, 5/4", "bf");
        material("Red oak, 4/4", "bf");
        material("Birch plywood, 1/2 in", "sheet");
    }

    @Test
    void showsWhatWasUnderstoodAndSavesItAsUses() throws Exception {
        for (SignedIn me : new SignedIn[] {ada, people.lead(), jonas}) {
            int before = uses();
            Document read = sent(me, Map.of("line", "2 shets birch ply, 11 bf red oak 5/4", "act", "save"), 200);
            assertThat(uses()).as("nothing before it was seen").isEqualTo(before);
            assertThat(read.select("option[selected]").eachText())
                    .contains("Birch plywood, 1/2 in (sheet)", "Red oak, 5/4 (bf)");
            Map<String, String> form = fields(read);
            sent(me, form, 302);
            sent(me, form, 302);
            assertThat(uses()).as("sent twice").isEqualTo(before + 2);
        }
        assertThat(jdbc.sql(
                                "select sum(u.quantity) from material_use u join material m on m.id = u.material_id where m.unit = 'bf'")
                        .query(BigDecimal.class)
                        .single())
                .isEqualByComparingTo("33");
    }

    @Test
    void asksWhatFitsMoreThanOneMaterialAndSavesNothingMeanwhile() throws Exception {
        Document read = sent(ada, Map.of("line", "11 bf red oak, 1 sheet birch"), 200);
        assertThat(read.text()).contains("More than one material is called so");
        Map<String, String> form = fields(read);
        Document refused = sent(ada, form, 422);
        assertThat(refused.select(".error").text()).contains("Choose a material");
        assertThat(uses()).isZero();
        form.put(
                "row.0.material",
                read.select("optgroup").get(0).select("option").get(1).val());
        sent(ada, form, 302);
        assertThat(uses()).isEqualTo(2);
    }

    @Test
    void anEmptiedQuantityLeavesItsRowOut() throws Exception {
        Map<String, String> form = fields(sent(ada, Map.of("line", "2 sheets birch, 3 bf red oak 4/4"), 200));
        form.put("row.0.quantity", "");
        sent(ada, form, 302);
        assertThat(uses()).isEqualTo(1);
    }

    @Test
    void refusesInWordsAndKeepsWhatIsTyped() throws Exception {
        Map<String, String> form = fields(sent(ada, Map.of("line", "2 sheets birch"), 200));
        form.put("row.0.quantity", "lots");
        form.put("job", "");
        Document refused = sent(ada, form, 422);
        assertThat(refused.select(".error").text()).contains("lots").contains("Say which job");
        assertThat(refused.select("input[name='row.0.quantity']").val()).isEqualTo("lots");
        form.put("row.0.id", "x");
        sent(ada, form, 422);
        sent(ada, Map.of("line", ""), 422);
        sent(ada, Map.of("line", "x".repeat(5000)), 422);
        assertThat(uses()).isZero();
    }

    @Test
    void aClosedJobTakesNone() throws Exception {
        Map<String, String> form = fields(sent(ada, Map.of("line", "2 sheets birch"), 200));
        jdbc.sql("update job set state = 'closed', closed_on = '2026-11-25' where id = ?")
                .param(job.id())
                .update();
        Document refused = sent(ada, form, 422);
        assertThat(refused.select(".error, .summary").text()).contains("closed");
        assertThat(uses()).isZero();
    }

    @Test
    void comesFromTheDayWithItsJobAndTheBookkeeperDoesNot() throws Exception {
        String html = mvc.perform(
                        get("/materials/used?on=2026-11-24&job=" + job.number()).with(signedIn(jonas)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
        Document page = Jsoup.parse(html);
        assertThat(page.select("select[name=job] option[selected]").val()).isEqualTo(job.number());
        assertThat(page.select("input[name=on]").val()).isEqualTo("2026-11-24");
        Document several = Jsoup.parse(mvc.perform(get("/materials/used?job=" + job.number() + "&job=26-099")
                        .with(signedIn(jonas)))
                .andReturn()
                .getResponse()
                .getContentAsString());
        assertThat(several.select("select[name=job] option[selected]").val())
                .as("a choice")
                .isEmpty();
        mvc.perform(get("/materials/used").with(signedIn(people.bookkeeper()))).andExpect(status().isForbidden());
    }

    @Test
    void theDayLeadsToItInOneTap() throws Exception {
        Document today = Jsoup.parse(mvc.perform(get("/").with(signedIn(jonas)))
                .andReturn()
                .getResponse()
                .getContentAsString());
        assertThat(today.select("a[href^='/materials/used?on=2026-11-25']")).hasSize(1);
    }

    private void material(String name, String unit) {
        jdbc.sql(
                        "insert into material (id, code, name, unit, starting_yield, stocked, version) values (?, ?, ?, ?, 0.8, true, 0)")
                .params(Ids.next(), "m" + UUID.randomUUID().toString().replace("-", ""), name, unit)
                .update();
    }

    private int uses() {
        return jdbc.sql("select count(*) from material_use")
                .query(Integer.class)
                .single();
    }

    private Document sent(SignedIn me, Map<String, String> fields, int status) throws Exception {
        Map<String, String> all = new LinkedHashMap<>(Map.of("job", job.number(), "on", "2026-11-24", "source", "job"));
        all.putAll(fields);
        MockHttpServletRequestBuilder request = post("/materials/used");
        all.forEach(request::param);
        return Jsoup.parse(mvc.perform(request.with(signedIn(me)).with(csrf()))
                .andExpect(status().is(status))
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private static Map<String, String> fields(Document page) {
        Map<String, String> fields = new LinkedHashMap<>();
        for (Element box : page.select("main form input[name^=row], main form select[name^=row]")) {
            Element chosen = box.selectFirst("option[selected]");
            fields.put(
                    box.attr("name"),
                    box.tagName().equals("select") ? (chosen == null ? "" : chosen.val()) : box.val());
        }
        fields.put("act", "save");
        return fields;
    }
}
