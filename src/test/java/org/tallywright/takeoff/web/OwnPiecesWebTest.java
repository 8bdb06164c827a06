package org.tallywright.takeoff.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.select.Elements;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.catalog.CatalogSeed;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDesk;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.materials.HeldOffcuts;
import org.tallywright.materials.MovementDraft;
import org.tallywright.materials.StoreRoom;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Money;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;
import org.tallywright.shared.UnitPrice;
import org.tallywright.web.SignedIn;

/** Offcuts and stock through page, layout and estimate; held offcuts; lengths of a dealer written down at the list. */
@AppTest
class OwnPiecesWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    CatalogSeed catalog;

    @Autowired
    PieceDesk pieces;

    @Autowired
    StoreRoom store;

    @Autowired
    HeldOffcuts held;

    private SignedIn owner;
    private JobRef job;
    private JobRef other;

    @BeforeEach
    void twoJobs() {
        owner = people.owner();
        catalog.load();
        job = jobs.lead(owner, "Library");
        other = jobs.lead(owner, "Study");
    }

    private MockHttpServletRequestBuilder as(SignedIn who, MockHttpServletRequestBuilder request) {
        return request.with(csrf()).with(SamplePeople.signedIn(who));
    }

    private Document answer(MockHttpServletRequestBuilder request, int status) throws Exception {
        return Jsoup.parse(mvc.perform(as(owner, request))
                .andExpect(status().is(status))
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private Document list(JobRef of) throws Exception {
        return answer(get("/jobs/" + of.number() + "/buy-list"), 200);
    }

    private void part(JobRef of, String quantity, String length, String width, String material) throws Exception {
        UUID piece = Ids.next();
        pieces.save(of.id(), piece, null, new PieceDetails(null, "Panels", null, null, null, 1, ""), owner.personId());
        answer(
                post("/jobs/" + of.number() + "/pieces/" + piece + "/parts")
                        .param("id", Ids.next().toString())
                        .param("name", "Panel")
                        .param("quantity", quantity)
                        .param("length", length)
                        .param("width", width)
                        .param("grain", "along")
                        .param("material", material(material).toString()),
                302);
    }

    private UUID offcut(String material, String size, String quantity) {
        UUID id = Ids.next();
        store.save(
                id,
                null,
                new MovementDraft.Kept(
                        new MovementDraft.Common(null, material(material), Quantity.of(quantity), "behind the saw"),
                        size,
                        Money.ZERO,
                        LocalDate.of(2026, 1, 5),
                        null),
                owner);
        return id;
    }

    private void stocked(String material, String quantity) {
        store.save(
                Ids.next(),
                null,
                new MovementDraft.Bought(
                        new MovementDraft.Common(null, material(material), Quantity.of(quantity), ""),
                        UnitPrice.of("5"),
                        Money.ZERO,
                        "",
                        "",
                        LocalDate.of(2026, 1, 5)),
                owner);
    }

    private UUID material(String code) {
        return jdbc.sql("select id from material where code = ?")
                .param(code)
                .query(UUID.class)
                .single();
    }

    private List<String> estimated() throws Exception {
        answer(post("/jobs/" + job.number() + "/buy-list/lines"), 302);
        return jdbc.sql("select m.code || ' ' || trim_scale(e.purchase_quantity) from estimate_material e"
                        + " join material m on m.id = e.material_id where job_id = ? order by m.code, e.position")
                .param(job.id())
                .query(String.class)
                .list();
    }

    private static String row(Document list, String material) {
        return list.select("table.buy tr:has(th:contains(" + material + "))").text();
    }

    /** A sheet of 48 x 96 gives two panels of 46 x 46; the offcut of 48 x 48 gives the third. */
    @Test
    void sheetsSayWhichOffcutIsUsedAndTheEstimateBuysTheRest() throws Exception {
        part(job, "3", "46", "46", "ply_maple_34");
        assertThat(estimated()).containsExactly("ply_maple_34 2");
        offcut("ply_maple_34", "48 x 48", "0.5");

        assertThat(row(list(job), "Maple veneer plywood"))
                .contains("1 sheet of", "1 offcut used", "Offcut 48 x 48, kept", "behind the saw");
        assertThat(estimated()).containsExactly("ply_maple_34 1");
        assertThat(list(job).select("figcaption").eachText())
                .anyMatch(text -> text.startsWith("Sheet 1: 48\" x 48\", offcut"))
                .anyMatch(text -> text.startsWith("Sheet 2: 96\" x 48\", to buy"));

        stocked("ply_maple_34", "4");
        assertThat(row(list(job), "Maple veneer plywood")).contains("0 sheets of", "1 sheet from stock");
        // Nothing is bought; what comes from stock was paid for and is charged to the job.
        assertThat(estimated()).containsExactly("ply_maple_34 1");
    }

    /** Crown in 8, 12 and 16 ft lengths: two of 40 in come out of an offcut of 84 in, and nothing is bought. */
    @Test
    void barsSayWhichOffcutIsUsed() throws Exception {
        part(job, "2", "40", "4 1/4", "crown_poplar");
        assertThat(estimated()).containsExactly("crown_poplar 8");
        offcut("crown_poplar", "30", "2.5");
        offcut("crown_poplar", "84", "7");

        assertThat(row(list(job), "Poplar crown"))
                .contains("1 offcut used", "Offcut 84, kept")
                .doesNotContain("Offcut 30");
        assertThat(estimated()).isEmpty();
    }

    /** Boards are counted, not laid out: an offcut shorter than every part does not count. */
    @Test
    void boardsUseOffcutsThatAreLongEnough() throws Exception {
        part(job, "6", "30", "3", "poplar_44");
        String before = row(list(job), "Poplar, 4/4");
        offcut("poplar_44", "24 x 6", "1");
        assertThat(row(list(job), "Poplar, 4/4")).isEqualTo(before);
        offcut("poplar_44", "40 x 6", "2");

        assertThat(row(list(job), "Poplar, 4/4"))
                .contains("2 bf from offcuts", "Offcut 40 x 6, kept")
                .doesNotContain("24 x 6");
        offcut("poplar_44", "96 x 12", "40");
        assertThat(estimated()).isEmpty();
    }

    @Test
    void aHeldOffcutIsLeftToItsJob() throws Exception {
        part(job, "1", "46", "46", "ply_maple_34");
        part(other, "1", "46", "46", "ply_maple_34");
        UUID offcut = offcut("ply_maple_34", "48 x 48", "0.5");
        assertThat(row(list(other), "Maple veneer plywood")).contains("1 offcut used");

        for (int n = 0; n < 2; n++) {
            answer(post("/jobs/" + job.number() + "/buy-list/offcuts"), 302);
        }
        assertThat(row(list(job), "Maple veneer plywood")).contains("held for this job");
        assertThat(list(job).select("form[action$=/buy-list/offcuts]")).isEmpty();
        assertThat(row(list(other), "Maple veneer plywood"))
                .contains("1 sheet of")
                .doesNotContain("offcut used");
        assertThat(list(other).text()).contains("Held for another job and left out: 48 x 48 (" + job.number() + ").");
        assertThat(answer(get("/materials/offcuts"), 200).text()).contains("held for " + job.number());
        assertThatThrownBy(() -> held.hold(other.id(), List.of(offcut), owner.personId()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("is held for " + job.number());

        answer(post("/jobs/" + job.number() + "/buy-list/offcuts/removal"), 302);
        assertThat(row(list(other), "Maple veneer plywood")).contains("1 offcut used");
    }

    private Elements unused(JobRef of) throws Exception {
        return list(of).select("li:has(form[action~=/buy-list/offcuts/.+/removal])");
    }

    private void removed(UUID offcut, int status) throws Exception {
        answer(post("/jobs/" + job.number() + "/buy-list/offcuts/" + offcut + "/removal"), status);
    }

    /** The panel is gone, so no layout uses the offcut and no line names it; it can be let go all the same. */
    @Test
    void aHeldOffcutThatIsNotUsedAnyMoreCanBeLetGo() throws Exception {
        part(job, "1", "46", "46", "ply_maple_34");
        UUID one = offcut("ply_maple_34", "48 x 48", "0.5");
        UUID crown = offcut("crown_poplar", "84", "7");
        held.hold(job.id(), List.of(one, crown), owner.personId());
        assertThat(unused(job).eachText())
                .singleElement()
                .asString()
                .startsWith("Poplar crown")
                .contains(", 84, kept");
        people.asShop(() -> jdbc.sql("delete from part").update());
        assertThat(unused(job)).hasSize(2);
        assertThat(list(job).select("form[action$=/buy-list/offcuts/removal]")).hasSize(1);
        assertThat(unused(other)).isEmpty();

        for (int n = 0; n < 2; n++) {
            removed(one, 302);
        }
        assertThat(held.all()).containsOnlyKeys(crown);
        removed(Ids.next(), 404);
        UUID theirs = offcut("ply_maple_34", "48 x 48", "0.5");
        held.hold(other.id(), List.of(theirs), owner.personId());
        removed(theirs, 404);
        assertThat(held.all()).containsEntry(theirs, other.number());

        answer(post("/jobs/" + job.number() + "/buy-list/offcuts/removal"), 302);
        assertThat(held.all()).containsOnlyKeys(theirs);
        assertThat(unused(job)).isEmpty();
    }

    @Test
    void whatIsUsedUpIsHeldForNobodyAndNotHeldAnew() throws Exception {
        UUID offcut = offcut("ply_maple_34", "48 x 48", "0.5");
        held.hold(job.id(), List.of(offcut), owner.personId());
        assertThat(held.all()).containsEntry(offcut, job.number());
        store.offcutGone(offcut, LocalDate.of(2026, 2, 1), owner);
        assertThat(held.all()).isEmpty();
        assertThatThrownBy(() -> held.hold(other.id(), List.of(offcut), owner.personId()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("used up meanwhile");
    }

    private void unwritten() {
        people.asShop(() -> jdbc.sql("update material set code = 'rail_oak' where code = 'base_poplar'")
                .update());
    }

    private MockHttpServletRequestBuilder lengths(String typed, String kerf) {
        return post("/jobs/" + job.number() + "/buy-list/lengths")
                .param("material", material("rail_oak").toString())
                .param("barLengths", typed)
                .param("kerf", kerf)
                .param("trim", "0");
    }

    /** 3 x 50 in = 12.5 ft; at the starting yield of 88 % that is an allowance of 14 %: 14.2, so 15 lf. Laid out: 12 ft gives two, 8 ft one. */
    @Test
    void aDealersLengthsAreWrittenDownAtTheList() throws Exception {
        unwritten();
        part(job, "3", "50", "5 1/2", "rail_oak");
        Document before = list(job);
        assertThat(before.text())
                .contains("net length and a waste allowance of 14 %: net / starting yield of 88 %")
                .contains("bought by net length and a waste allowance");
        assertThat(estimated()).containsExactly("rail_oak 15");

        Document refused = answer(lengths("8 ft; ten", "1/8"), 422);
        assertThat(refused.select("input[name=barLengths]").val()).isEqualTo("8 ft; ten");
        assertThat(refused.select("p.error").text()).isNotEmpty();
        assertThat(answer(lengths("", "1/8"), 422).text()).contains("Write the lengths it is sold in");
        assertThat(answer(lengths("8 ft", "-1/8"), 422).text()).contains("A length cannot be negative here.");
        for (int n = 0; n < 2; n++) {
            answer(lengths("8 ft; 12 ft", "1/8"), 302);
        }

        assertThat(row(list(job), "Poplar base")).contains("1 of 96\"1 of 144\"");
        assertThat(list(job).select("form[action$=/buy-list/lengths]")).isEmpty();
        assertThat(answer(get("/catalog/materials/" + material("rail_oak") + "/form"), 200)
                        .select("input[name=barLengths]")
                        .val())
                .contains("8'", "12'");
    }

    @Test
    void onlyTheOwnerWritesLengthsDown() throws Exception {
        unwritten();
        part(job, "3", "50", "5 1/2", "rail_oak");
        SignedIn lead = people.lead();
        assertThat(mvc.perform(as(lead, get("/jobs/" + job.number() + "/buy-list")))
                        .andExpect(status().isOk())
                        .andReturn()
                        .getResponse()
                        .getContentAsString())
                .doesNotContain("buy-list/lengths");
        mvc.perform(as(lead, lengths("8 ft", "1/8"))).andExpect(status().isForbidden());
    }

    /** Of a finished job 20 of 40 bf are in the work: the shop's own yield stands beside the starting one, with its count. */
    @Test
    void theShopsOwnYieldStandsBesideTheStartingOne() throws Exception {
        part(job, "6", "30", "3", "poplar_44");
        Document none = list(job);
        assertThat(none.select("td[data-label='Your finished jobs']").text()).isEqualTo("\u2013");
        assertThat(none.select("td[data-label='Starting yield']").text())
                .contains("70 %", "common practice, no source");
        finished("poplar_44", "40", "20");

        String own = list(job).select("td[data-label='Your finished jobs']").text();
        assertThat(own).contains("1 job", "still the starting yield");
        int likely = Integer.parseInt(own.replaceAll("^(\\d+) %.*", "$1"));
        assertThat(likely).isBetween(50, 69);
        assertThat(list(job).select("td[data-label='Starting yield']").text()).contains("70 %");
    }

    private void finished(String material, String charged, String net) {
        JobRef done = jobs.running(owner, "Done");
        store.save(
                Ids.next(),
                null,
                new MovementDraft.Bought(
                        new MovementDraft.Common(done.id(), material(material), Quantity.of(charged), ""),
                        UnitPrice.of("5"),
                        Money.ZERO,
                        "",
                        "",
                        LocalDate.of(2026, 1, 5)),
                owner);
        store.save(
                Ids.next(),
                null,
                new MovementDraft.Taken(
                        new MovementDraft.Common(done.id(), material(material), Quantity.of(net), ""),
                        Quantity.of(net),
                        false,
                        LocalDate.of(2026, 1, 6)),
                owner);
        people.asShop(() -> jdbc.sql("update job set state = 'closed', closed_on = date '2026-02-01' where id = ?")
                .param(done.id())
                .update());
    }
}
