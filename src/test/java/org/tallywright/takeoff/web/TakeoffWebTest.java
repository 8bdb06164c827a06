package org.tallywright.takeoff.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.flash;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.QueryCount;
import org.tallywright.catalog.CatalogSeed;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.catalog.TaskKindMerging;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDesk;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;
import org.tallywright.web.SignedIn;

/** From a bookcase to its parts, tasks, cut list, buy list and the estimate's material lines. */
@AppTest
class TakeoffWebTest {
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

    @Autowired
    TaskKinds taskKinds;

    @Autowired
    TaskKindMerging merging;

    private SignedIn owner;
    private SignedIn helper;
    private JobRef job;
    private UUID piece;
    private String base;

    @BeforeEach
    void bookcase() {
        owner = people.owner();
        helper = people.helper();
        catalog.load();
        job = jobs.lead(owner, "Library");
        piece = Ids.next();
        pieces.save(job.id(), piece, null, details("34 1/8", 2), owner.personId());
        base = "/jobs/" + job.number();
    }

    private PieceDetails details(String width, int count) {
        return new PieceDetails(
                kinds.named("Bookcase").orElseThrow().id(),
                "Left bookcase",
                Length.parse(width, Units.IMPERIAL),
                Length.parse("92 3/4", Units.IMPERIAL),
                Length.parse("13 1/2", Units.IMPERIAL),
                count,
                "");
    }

    private MockHttpServletRequestBuilder as(SignedIn who, MockHttpServletRequestBuilder request) {
        return request.with(csrf()).with(SamplePeople.signedIn(who));
    }

    private String page(SignedIn who, String path) throws Exception {
        return mvc.perform(as(who, get(path)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }

    private void takeOff(String... settings) throws Exception {
        MockHttpServletRequestBuilder request = as(owner, post(base + "/pieces/" + piece + "/takeoff"));
        for (int i = 0; i < settings.length; i += 2) {
            request.param(settings[i], settings[i + 1]);
        }
        mvc.perform(request).andExpect(status().is3xxRedirection());
    }

    @Test
    void takesOffThenListsCutsAndBuys() throws Exception {
        takeOff("set-shelves", "6");

        assertThat(page(owner, base + "/pieces/" + piece + "/parts"))
                .contains("Loose shelf", "31&quot; x 11 3/4&quot;", "White oak veneer plywood, 3/4 in, 48 x 96");
        String cuts = page(helper, base + "/cut-list");
        assertThat(cuts).contains("2 alike", "Loose shelf", "92 3/4&quot;").doesNotContain("172", "buy-list");
        // Twelve loose shelves for two bookcases of six each.
        assertThat(cuts).containsPattern("Loose shelf[\\s\\S]{0,200}>12<");
        assertThat(page(owner, base + "/buy-list"))
                .contains("<svg", "to buy", "common practice, no source", "Crosscut", "Shelf pins")
                .doesNotContain("172");
        assertThat(page(owner, base + "/pieces/" + piece + "/proposals")).contains("counted from its parts");
    }

    /**
     * Face 34 1/8 x 92 3/4 in = 21.980 sf, twice; unloading by the rule is 1.5 bf for each sf: 65.9 bf. Rough milling by
     * the formula: 34 1/8 x 13 1/2 x 1 in = 3.2 bf, twice: 6.4 bf.
     */
    @Test
    void aFormulaForOneOfTwoMergedKindsLeavesTheOtherItsRule() throws Exception {
        TaskKindCard unload = taskKinds.coded("unload_sticker").orElseThrow();
        TaskKindCard mill = taskKinds.coded("rough_mill").orElseThrow();
        mvc.perform(as(
                                owner,
                                post("/catalog/piece-kinds/"
                                        + kinds.named("Bookcase").orElseThrow().id() + "/parts"))
                        .param(
                                "text",
                                "material | case | Case | ply_wo_34\npart | Board | case | 1 | width | depth\n"
                                        + "task | rough_mill | case_area * 1 in"))
                .andExpect(status().is3xxRedirection());
        takeOff();
        merging.merge(unload.id(), unload.version(), mill.id(), owner.personId());

        Element line = Jsoup.parse(page(owner, base + "/pieces/" + piece + "/proposals"))
                .selectFirst(".proposals li:has(input[value=" + mill.id() + "])");
        assertThat(line.select(".box").val()).isEqualTo("72.3");
        assertThat(line.text()).contains("partly counted from its parts, partly by a rule of thumb");
    }

    private Element trips(UUID of) throws Exception {
        UUID kind = taskKinds.coded("supply_run").orElseThrow().id();
        return Jsoup.parse(page(owner, base + "/pieces/" + of + "/proposals"))
                .selectFirst(".proposals li:has(input[value=" + kind + "])");
    }

    private void takeTrips(UUID of, String quantity) throws Exception {
        Element line = trips(of);
        assertThat(line.select(".box").val()).isEqualTo(quantity);
        assertThat(line.select("input[checked]")).hasSize(1);
        MockHttpServletRequestBuilder taken = as(owner, post(base + "/pieces/" + of + "/proposals"))
                .param("take-" + line.select("[name=row]").val(), "true");
        line.select("input:not([type=checkbox])").forEach(box -> taken.param(box.attr("name"), box.val()));
        mvc.perform(taken).andExpect(status().is3xxRedirection());
    }

    /** A sheet a piece: two of them are two loads and a trip beside; four more make it seven, of which three are there. */
    @Test
    void aLaterPieceOffersOnlyTheTripsThatTheJobHasNot() throws Exception {
        UUID bookcase = kinds.named("Bookcase").orElseThrow().id();
        mvc.perform(as(owner, post("/catalog/piece-kinds/" + bookcase + "/parts"))
                        .param("text", """
                                material | case | Case | ply_wo_34
                                part | Panel | case | 1 | 4 ft | 8 ft
                                task | supply_run | case_area / (4 ft * 8 ft) | up(job) + 1"""))
                .andExpect(status().is3xxRedirection());
        takeOff();
        takeTrips(piece, "3");
        Element same = trips(piece);
        assertThat(same.text()).contains("the job has 3, its pieces come to 3 now");
        assertThat(same.select("input[checked]")).isEmpty();

        UUID first = piece;
        piece = Ids.next();
        pieces.save(job.id(), piece, null, details("34 1/8", 4), owner.personId());
        takeOff();
        assertThat(trips(piece).text()).contains("the job has 3, its pieces come to 7 now");
        takeTrips(piece, "4");
        assertThat(trips(first).text()).contains("the job has 7, its pieces come to 7 now");
        assertThat(trips(first).select("input[checked]")).isEmpty();
        assertThat(trips(first).select(".box").val()).isEqualTo("0");

        people.asShop(() -> jdbc.sql("update task set state = 'dropped', version = version + 1")
                .update());
        Element dropped = trips(first);
        assertThat(dropped.select(".box").val()).isEqualTo("7");
        assertThat(dropped.select("input[checked]")).isEmpty();
        assertThat(dropped.text()).contains("is in the plan already");
    }

    @Test
    void helperSeesNeitherBuyListNorFormulas() throws Exception {
        mvc.perform(as(helper, get(base + "/buy-list"))).andExpect(status().isForbidden());
        mvc.perform(as(helper, get(base + "/pieces/" + piece + "/parts"))).andExpect(status().isForbidden());
    }

    @Test
    void putsThePurchaseIntoTheEstimateAndFollowsIt() throws Exception {
        takeOff();
        mvc.perform(as(owner, post(base + "/buy-list/lines"))).andExpect(status().is3xxRedirection());
        List<String> lines = lines();
        assertThat(lines).isNotEmpty();

        // Again is a repeat; a wider piece brings the same lines up to date.
        mvc.perform(as(owner, post(base + "/buy-list/lines"))).andExpect(status().is3xxRedirection());
        assertThat(lines()).isEqualTo(lines);
        Integer version = jdbc.sql("select version from piece where id = ?")
                .param(piece)
                .query(Integer.class)
                .single();
        pieces.save(job.id(), piece, version, details("120", 2), owner.personId());
        takeOff();
        mvc.perform(as(owner, post(base + "/buy-list/lines"))).andExpect(status().is3xxRedirection());

        assertThat(lines()).hasSameSizeAs(lines).isNotEqualTo(lines);
        String list = page(owner, base + "/buy-list");
        jdbc.sql("select purchase_quantity from estimate_material where job_id = ?")
                .param(job.id())
                .query((row, n) -> row.getBigDecimal(1).stripTrailingZeros().toPlainString())
                .list()
                .forEach(quantity -> assertThat(list).contains("<b>" + quantity + "</b>"));
    }

    private List<String> lines() {
        return jdbc.sql(
                        "select m.code || ' ' || e.purchase_quantity from estimate_material e join material m on m.id = e.material_id where job_id = ? order by m.code")
                .param(job.id())
                .query(String.class)
                .list();
    }

    @Test
    void refusesAFormulaWithItsPlaceAndKeepsWhatWasTyped() throws Exception {
        mvc.perform(as(owner, post(base + "/pieces/" + piece + "/takeoff")).param("set-dado", "1/4 in +"))
                .andExpect(status().isUnprocessableEntity())
                .andExpect(content().string(containsString("At character 9")))
                .andExpect(content().string(containsString("value=\"1/4 in +\"")));
    }

    @Test
    void ownFormulasReplaceTheShippedOnesAndAreRefusedByLine() throws Exception {
        String kind =
                "/catalog/piece-kinds/" + kinds.named("Bookcase").orElseThrow().id() + "/parts";
        mvc.perform(as(owner, post(kind))
                        .param("text", "material | case | Case | ply_wo_34\npart | Board | case | 1 | widht | depth"))
                .andExpect(status().isUnprocessableEntity())
                .andExpect(content().string(containsString("Line 2")))
                .andExpect(content().string(containsString("not known here")));
        mvc.perform(as(owner, post(kind))
                        .param("text", "material | case | Case | ply_wo_34\npart | Board | case | 1 | width | depth"))
                .andExpect(status().is3xxRedirection());
        takeOff();
        assertThat(page(owner, base + "/cut-list")).contains("1 Board").doesNotContain("Loose shelf");
        mvc.perform(as(owner, post(kind).param("text", "part"))).andExpect(status().isUnprocessableEntity());
        mvc.perform(as(owner, post(kind + "/shipped"))).andExpect(status().is3xxRedirection());
        assertThat(page(owner, kind)).contains("Loose shelf");
    }

    @Test
    void pastedListIsShownFirstAndErrorsNameRowAndColumn() throws Exception {
        String paste = base + "/pieces/" + piece + "/pasted-parts";
        UUID form = Ids.next();
        String wrong = "name\tquantity\tlength\twidth\nDoor\t2\t30 1/3\t15\n\t0\t12\t-1";
        mvc.perform(as(owner, post(paste + "/preview"))
                        .param("form", form.toString())
                        .param("text", wrong))
                .andExpect(status().isUnprocessableEntity())
                .andExpect(content().string(containsString("not one of a tape")))
                .andExpect(content().string(containsString("A length cannot be negative here.")));

        String right =
                "Part;Qty;Length;Width;Material;Grain;Match\nDoor;2;30 1/4\";15;ply_wo_34;along;pair\nShelf;4;28;11;;;";
        mvc.perform(as(owner, post(paste + "/preview"))
                        .param("form", form.toString())
                        .param("text", right))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("Add these 2 lines")));
        for (int n = 0; n < 2; n++) {
            mvc.perform(as(owner, post(paste)).param("form", form.toString()).param("text", right))
                    .andExpect(status().is3xxRedirection());
        }
        assertThat(jdbc.sql("select count(*) from part").query(Integer.class).single())
                .isEqualTo(2);
    }

    /** Each of two: six doors go in three rows of two on a sheet; the seventh goes on another, and that is said of the group. */
    @Test
    void partsMatchingPartsThatNoSheetTakes() throws Exception {
        matching("30", "6");
        assertThat(page(owner, base + "/buy-list"))
                .contains("2 sheets of")
                .doesNotContain("No sheet takes all", "trim;");
        matching("30", "1");
        assertThat(page(owner, base + "/buy-list"))
                .contains("3 sheets of")
                .contains("No sheet takes all that match as doors in ")
                .contains("they are cut in 2 groups, and the figure runs on only within each.")
                .doesNotContain("is larger than a sheet");
    }

    private void matching(String length, String quantity) throws Exception {
        mvc.perform(as(owner, post(base + "/pieces/" + piece + "/parts"))
                        .param("id", Ids.next().toString())
                        .param("name", "Door")
                        .param("quantity", quantity)
                        .param("length", length)
                        .param("width", "20")
                        .param("grain", "along")
                        .param("matched", "doors")
                        .param("material", material("ply_wo_34")))
                .andExpect(status().is3xxRedirection());
    }

    @Test
    void saysInWordsWhatCannotBeCut() throws Exception {
        UUID part = Ids.next();
        mvc.perform(as(owner, post(base + "/pieces/" + piece + "/parts"))
                        .param("id", part.toString())
                        .param("name", "Long panel")
                        .param("quantity", "1")
                        .param("length", "10 ft")
                        .param("width", "20")
                        .param("material", material("ply_wo_34")))
                .andExpect(status().is3xxRedirection());
        assertThat(page(owner, base + "/buy-list")).contains("is larger than a sheet inside its trim");

        String form = "/catalog/materials/" + material("ply_wo_34") + "/form";
        mvc.perform(as(owner, post(form))
                        .param("form", "sheet")
                        .param("thickness", "3/4")
                        .param("sheetLength", "96")
                        .param("sheetWidth", "48")
                        .param("kerf", "-1/8")
                        .param("trim", "0"))
                .andExpect(status().isUnprocessableEntity())
                .andExpect(content().string(containsString("A length cannot be negative here.")));
        mvc.perform(as(owner, post(form))
                        .param("form", "sheet")
                        .param("thickness", "3/4")
                        .param("sheetLength", "144")
                        .param("sheetWidth", "48")
                        .param("kerf", "0")
                        .param("trim", "0"))
                .andExpect(status().is3xxRedirection());
        assertThat(page(owner, base + "/buy-list")).doesNotContain("is larger than a sheet");
    }

    /** 8/4 is two inches rough wherever it is typed; the table's planed size is said, and that it is to be measured. */
    @Test
    void readsANamedSizeAsItsRoughThickness() throws Exception {
        people.asShop(() -> jdbc.sql("update shop set units = 'metric'").update());
        mvc.perform(as(owner, post("/catalog/materials/" + material("red_oak_54") + "/form"))
                        .param("form", "board")
                        .param("thickness", "8/4")
                        .param("shortest", "1800")
                        .param("longest", "3600")
                        .param("narrowest", "120")
                        .param("widest", "240")
                        .param("kerf", "3")
                        .param("trim", "0"))
                .andExpect(status().is3xxRedirection())
                .andExpect(flash().attribute(
                                "flash",
                                containsString("8/4 planed on both faces is \u2248 44.45 mm thick in the tables")));
        assertThat(jdbc.sql("select thickness from material_form where id = ?::uuid")
                        .param(material("red_oak_54"))
                        .query(Long.class)
                        .single())
                .isEqualTo(2L * 64 * 127);
    }

    /** 9,999 of one part on two pieces alike: too many to lay out, so reckoned by the yield, and said so. */
    @Test
    void tenThousandPartsAreReckonedByTheYield() throws Exception {
        mvc.perform(as(owner, post(base + "/pieces/" + piece + "/parts"))
                        .param("id", Ids.next().toString())
                        .param("name", "Slat")
                        .param("quantity", "9999")
                        .param("length", "20")
                        .param("width", "2")
                        .param("material", material("ply_wo_34")))
                .andExpect(status().is3xxRedirection());

        assertThat(page(owner, base + "/buy-list")).contains("19998 parts are too many to lay out");
    }

    @Test
    void usesOffcutsAndStockFirst() throws Exception {
        mvc.perform(as(owner, post(base + "/pieces/" + piece + "/parts"))
                        .param("id", Ids.next().toString())
                        .param("name", "Panel")
                        .param("quantity", "1")
                        .param("length", "30")
                        .param("width", "20")
                        .param("grain", "along")
                        .param("material", material("ply_maple_34")))
                .andExpect(status().is3xxRedirection());
        assertThat(page(owner, base + "/buy-list")).contains("1 sheet of").doesNotContain("offcut used");
        jdbc.sql("""
                        with t as (select set_config('tallywright.person', 'shop', true), set_config('tallywright.at', now()::text, true))
                        insert into offcut (id, material_id, size, quantity, kept_on, version)
                        select ?, m.id, '64 x 48', 0.5, date '2026-01-01', 0 from t, material m where m.code = 'ply_maple_34'""").param(Ids.next()).update();

        assertThat(page(owner, base + "/buy-list")).contains("0 sheets of", "1 offcut used");
    }

    @Test
    void saysWhereAMaterialStandsInTheEstimateTwice() throws Exception {
        takeOff();
        mvc.perform(as(owner, post(base + "/estimate/materials"))
                        .param("id", Ids.next().toString())
                        .param("material", material("ply_wo_34"))
                        .param("net", "3"))
                .andExpect(status().is3xxRedirection());

        mvc.perform(as(owner, post(base + "/buy-list/lines")))
                .andExpect(status().is3xxRedirection())
                .andExpect(flash().attribute(
                                "flash", containsString("perhaps counted twice: White oak veneer plywood, 3/4 in")));
    }

    @Test
    void aLineGoesWhenNoPartNeedsItAnyMore() throws Exception {
        takeOff();
        mvc.perform(as(owner, post(base + "/buy-list/lines"))).andExpect(status().is3xxRedirection());
        assertThat(lines()).anyMatch(line -> line.startsWith("ply_wo_14 "));

        takeOff("mat-back", material("ply_maple_14"), "version", "0");
        mvc.perform(as(owner, post(base + "/buy-list/lines"))).andExpect(status().is3xxRedirection());

        assertThat(lines())
                .noneMatch(line -> line.startsWith("ply_wo_14 "))
                .anyMatch(line -> line.startsWith("ply_maple_14 "));
    }

    /** Sheet goods, bars and boards each ask the database a fixed number of times, however many pieces there are. */
    @Test
    void buyListAsksNoMoreForMorePieces() throws Exception {
        takeOff();
        int few = QueryCount.of(() -> page(owner, base + "/buy-list")).size();
        for (int n = 0; n < 4; n++) {
            UUID more = Ids.next();
            pieces.save(job.id(), more, null, details("40", 1), owner.personId());
            mvc.perform(as(owner, post(base + "/pieces/" + more + "/takeoff"))).andExpect(status().is3xxRedirection());
        }
        assertThat(QueryCount.of(() -> page(owner, base + "/buy-list")).size())
                .isEqualTo(few)
                .isLessThan(30);
    }

    private String material(String code) {
        return jdbc.sql("select id::text from material where code = ?")
                .param(code)
                .query(String.class)
                .single();
    }
}
