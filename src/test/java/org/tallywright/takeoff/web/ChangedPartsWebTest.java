package org.tallywright.takeoff.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.catalog.CatalogSeed;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDesk;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;
import org.tallywright.web.SignedIn;

/** Parts of the formulas that somebody changed or took out, and taking off again. */
@AppTest
class ChangedPartsWebTest {
    private static final String STALE = "Sizes, settings or formulas have changed";

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
    PieceKinds kinds;

    @Autowired
    PieceDesk pieces;

    private SignedIn owner;
    private JobRef job;
    private UUID piece;
    private String base;

    /** Two sides, a top and two backs by two lines of one name. */
    @BeforeEach
    void box() throws Exception {
        owner = people.owner();
        catalog.load();
        UUID kind = kinds.named("Bookcase").orElseThrow().id();
        ok(post("/catalog/piece-kinds/" + kind + "/parts").param("text", """
                material | case | Case | ply_wo_34
                part | Side | case | 2 | height | depth
                part | Top | case | 1 | width | depth
                part | Back | case | 1 | height | width / 2
                part | Back | case | 1 | height | width / 2"""));
        job = jobs.lead(owner, "Library");
        piece = Ids.next();
        sized("40", null);
        base = "/jobs/" + job.number() + "/pieces/" + piece;
        ok(post(base + "/takeoff"));
    }

    private void sized(String width, @Nullable Integer version) {
        pieces.save(
                job.id(),
                piece,
                version,
                new PieceDetails(
                        kinds.named("Bookcase").orElseThrow().id(),
                        "Box",
                        Length.parse(width, Units.IMPERIAL),
                        Length.parse("30", Units.IMPERIAL),
                        Length.parse("12", Units.IMPERIAL),
                        1,
                        ""),
                owner.personId());
    }

    private ResultActions ok(MockHttpServletRequestBuilder request) throws Exception {
        return mvc.perform(request.with(csrf()).with(SamplePeople.signedIn(owner)))
                .andExpect(status().is3xxRedirection());
    }

    private String again() throws Exception {
        return Objects.toString(ok(post(base + "/takeoff").param("version", "0"))
                .andReturn()
                .getFlashMap()
                .get("flash"));
    }

    private Document page(String path) throws Exception {
        return Jsoup.parse(mvc.perform(get(path).with(SamplePeople.signedIn(owner)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private List<String> parts() {
        return jdbc.sql("select name || ' ' || quantity from part order by name, position")
                .query(String.class)
                .list();
    }

    private UUID part(String rule) {
        return jdbc.sql("select id from part where rule = ?")
                .param(rule)
                .query(UUID.class)
                .single();
    }

    private void change(String rule, String name, String quantity) throws Exception {
        Document form = page(base + "/parts/" + part(rule));
        ok(post(base + "/parts/" + part(rule))
                .param("id", part(rule).toString())
                .param("version", form.select("input[name=version]").attr("value"))
                .param("name", name)
                .param("quantity", quantity)
                .param("length", "30")
                .param("width", "11")
                .param("grain", "along")
                .param(
                        "material",
                        form.select("select[name=material] option[selected]").attr("value")));
    }

    @Test
    void aChangedPartStaysAndItsLineIsSkipped() throws Exception {
        change("Side", "Side, scribed", "3");
        assertThat(page(base + "/parts").text())
                .contains("changed by hand: the formulas leave it alone")
                .doesNotContain(STALE);

        assertThat(again()).contains("3 lines of parts are taken off.", "1 changed and 0 left out by hand");
        assertThat(parts()).containsExactly("Back 1", "Back 1", "Side, scribed 3", "Top 1");

        sized("44", 0);
        assertThat(page(base + "/parts").text()).contains(STALE);
        again();
        assertThat(parts()).containsExactly("Back 1", "Back 1", "Side, scribed 3", "Top 1");
        assertThat(page(base + "/parts").text()).doesNotContain(STALE);
    }

    @Test
    void aRemovedPartStaysOutUntilItIsBroughtBack() throws Exception {
        ok(post(base + "/parts/" + part("Back #2") + "/removal"));
        ok(post(base + "/parts/" + Ids.next() + "/removal"));
        assertThat(page(base + "/parts").text())
                .contains("Left out by hand", "Back #2")
                .doesNotContain(STALE);
        assertThat(again()).contains("0 changed and 1 left out by hand");
        assertThat(parts()).containsExactly("Back 1", "Side 2", "Top 1");

        for (int n = 0; n < 2; n++) {
            ok(post(base + "/left-out/removal").param("rule", "Back #2"));
            assertThat(parts()).containsExactly("Back 1", "Back 1", "Side 2", "Top 1");
        }
        assertThat(page(base + "/parts").text())
                .doesNotContain("Left out by hand")
                .doesNotContain(STALE);
    }

    /** Out and back again is the way from a changed part to the formulas' own. */
    @Test
    void aChangedPartTakenOutComesBackAsTheFormulasMakeIt() throws Exception {
        change("Top", "Thick top", "2");
        ok(post(base + "/parts/" + part("Top") + "/removal"));
        ok(post(base + "/left-out/removal").param("rule", "Top"));
        assertThat(parts()).containsExactly("Back 1", "Back 1", "Side 2", "Top 1");
    }

    @Test
    void whatTheFormulasNoLongerMakeIsNotBroughtBack() throws Exception {
        ok(post(base + "/parts/" + part("Top") + "/removal"));
        ok(post("/catalog/piece-kinds/" + kinds.named("Bookcase").orElseThrow().id() + "/parts")
                .param("version", "0")
                .param("text", "material | case | Case | ply_wo_34\npart | Side | case | 2 | height | depth"));
        ok(post(base + "/left-out/removal").param("rule", "Top"));
        assertThat(parts()).doesNotContain("Top 1");
        assertThat(page(base + "/parts").text()).contains(STALE).doesNotContain("Left out by hand");
    }

    @Test
    void aPartListedByHandGoesWithoutATrace() throws Exception {
        UUID shelf = Ids.next();
        ok(post(base + "/parts")
                .param("id", shelf.toString())
                .param("name", "Shelf")
                .param("quantity", "1")
                .param("length", "30")
                .param("width", "11"));
        ok(post(base + "/parts/" + shelf + "/removal"));
        assertThat(page(base + "/parts").text())
                .doesNotContain("Left out by hand")
                .doesNotContain(STALE);
    }

    @Test
    void theBuyListNamesPiecesWithOldParts() throws Exception {
        String list = "/jobs/" + job.number() + "/buy-list";
        change("Top", "Thick top", "2");
        ok(post(base + "/parts/" + part("Back #2") + "/removal"));
        assertThat(page(list).select("a[href$=/pieces/" + piece + "/parts]")).isEmpty();
        sized("44", 0);
        assertThat(page(list).select("a[href$=/pieces/" + piece + "/parts]").text())
                .isEqualTo("Box");
        assertThat(Objects.toString(
                        ok(post(list + "/lines")).andReturn().getFlashMap().get("flash")))
                .contains("Taken off before sizes or formulas changed", "Box");
        again();
        assertThat(page(list).select("a[href$=/pieces/" + piece + "/parts]")).isEmpty();
    }
}
