package org.tallywright.trail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.catalog.CatalogSeed;
import org.tallywright.catalog.Materials;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.sharing.ClientLinks;
import org.tallywright.web.SignedIn;

/** What is changed on a page leaves a row that names who changed it. */
@AppTest
class TrailOfPagesWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    CatalogSeed catalog;

    @Autowired
    Materials materials;

    @Autowired
    TaskKinds kinds;

    @Autowired
    ClientLinks links;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;

    @BeforeEach
    void openShop() {
        ada = people.owner();
        catalog.load();
    }

    @Test
    void namesWhoSetAPriceOfAMaterial() throws Exception {
        UUID oak = materials.coded("red_oak_54").orElseThrow().id();
        send("/catalog/materials/" + oak + "/prices", "from", "2026-12-01", "price", "9.90", "basis", "list");
        assertThat(byAda("material_price", oak + " 2026-12-01")).containsExactly("insert");
    }

    @Test
    void namesWhoTookATaskKindOutOfUse() throws Exception {
        UUID kind = kinds.coded("rough_mill").orElseThrow().id();
        send("/catalog/task-kinds/" + kind + "/retirement");
        assertThat(byAda("task_kind", kind.toString())).containsExactly("update");
    }

    @Test
    void namesWhoStartedATask() throws Exception {
        JobRef job = jobs.windowSeat(ada);
        UUID task = jdbc.sql("select id from task where job_id = ? order by position, id limit 1")
                .param(job.id())
                .query(UUID.class)
                .single();
        send("/jobs/" + job.number() + "/tasks/" + task + "/start");
        assertThat(byAda("task", task.toString())).endsWith("update");
    }

    @Test
    void namesWhoAnnouncedAVisitAndTookItBack() throws Exception {
        JobRef job = jobs.windowSeat(ada);
        String visit = "/jobs/" + job.number() + "/sharing/visit";
        send(visit, "from", "2026-12-01", "to", "2026-12-02", "visitNote", "Clear the alcove.");
        String version = jdbc.sql("select version from next_visit where job_id = ?")
                .param(job.id())
                .query(String.class)
                .single();
        send(visit, "from", "", "to", "", "version", version);
        assertThat(byAda("next_visit", job.id().toString())).containsExactly("insert", "delete");
    }

    @Test
    void namesWhoInvited() throws Exception {
        SignedIn jonas = people.helper();
        mvc.perform(post("/crew/" + jonas.personId() + "/invitations")
                        .with(csrf())
                        .with(signedIn(ada)))
                .andExpect(status().isOk());
        UUID invitation =
                jdbc.sql("select id from invitation").query(UUID.class).single();
        assertThat(byAda("invitation", invitation.toString())).containsExactly("insert");
        assertThat(lines("invitation")).allSatisfy(row -> assertThat(row).doesNotContain("token_hash"));
    }

    @Test
    void namesWhoMadeAndEndedALinkAndCountsLooksWithoutARow() throws Exception {
        JobRef job = jobs.windowSeat(ada);
        String token = links.make(job.id(), "Orrin", 30, ada.personId());
        UUID link = links.of(job.id()).get(0).id();
        mvc.perform(get("/c/" + token)).andExpect(status().isOk());
        assertThat(links.of(job.id()).get(0).views()).isOne();
        send("/jobs/" + job.number() + "/sharing/links/" + link + "/revocation");
        assertThat(byAda("client_link", link.toString())).containsExactly("insert", "update");
        assertThat(lines("client_link")).allSatisfy(row -> assertThat(row).doesNotContain("token_hash"));
    }

    @Test
    void refusesAPriceThatNamesNobody() {
        assertThatThrownBy(() ->
                        jdbc.sql("update material_price set unit_price = 1").update())
                .rootCause()
                .hasMessageContaining("a change to material_price names nobody");
    }

    @ParameterizedTest
    @CsvSource({"task,quantity = quantity + 1", "task_kind,active = false"})
    void letsALenientTableChangeWithoutAName(String table, String change) {
        jobs.windowSeat(ada);
        int before = lines(table).size();
        assertThat(jdbc.sql("update " + table + " set " + change).update()).isPositive();
        assertThat(lines(table)).hasSize(before);
    }

    private void send(String path, String... fields) throws Exception {
        var request = post(path)
                .with(signedIn(ada))
                .with(csrf())
                .param("id", Ids.next().toString());
        for (int i = 0; i < fields.length; i += 2) {
            request.param(fields[i], fields[i + 1]);
        }
        mvc.perform(request).andExpect(status().is3xxRedirection());
    }

    private List<String> byAda(String subject, String id) {
        return jdbc.sql(
                        "select act from audit_entry where subject = ? and subject_id = ? and person_id = ? order by id")
                .params(subject, id, ada.personId())
                .query(String.class)
                .list();
    }

    private List<String> lines(String subject) {
        return jdbc.sql("select a::text from audit_entry a where subject = ?")
                .param(subject)
                .query(String.class)
                .list();
    }
}
