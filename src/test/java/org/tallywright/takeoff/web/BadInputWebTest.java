package org.tallywright.takeoff.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
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

/** What cannot be cut, reckoned or read is answered in words, and what was typed stays. */
@AppTest
class BadInputWebTest {
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
    private String base;
    private String piece;
    private String formulas;

    @BeforeEach
    void bookcase() {
        owner = people.owner();
        catalog.load();
        JobRef job = jobs.lead(owner, "Library");
        UUID kind = kinds.named("Bookcase").orElseThrow().id();
        UUID id = Ids.next();
        Length size = Length.parse("36", Units.IMPERIAL);
        pieces.save(job.id(), id, null, new PieceDetails(kind, "Case", size, size, size, 1, ""), owner.personId());
        base = "/jobs/" + job.number();
        piece = base + "/pieces/" + id;
        formulas = "/catalog/piece-kinds/" + kind + "/parts";
    }

    private Document answer(MockHttpServletRequestBuilder request, int status) throws Exception {
        return Jsoup.parse(mvc.perform(request.with(csrf()).with(SamplePeople.signedIn(owner)))
                .andExpect(status().is(status))
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private String material(String code) {
        return jdbc.sql("select id::text from material where code = ?")
                .param(code)
                .query(String.class)
                .single();
    }

    private MockHttpServletRequestBuilder part(String quantity, String length, String width, String material) {
        return post(piece + "/parts")
                .param("id", Ids.next().toString())
                .param("name", "Panel")
                .param("quantity", quantity)
                .param("length", length)
                .param("width", width)
                .param("grain", "along")
                .param("material", material(material));
    }

    private MockHttpServletRequestBuilder sheet(String thickness, String kerf, String trim) {
        return post("/catalog/materials/" + material("ply_maple_34") + "/form")
                .param("form", "sheet")
                .param("thickness", thickness)
                .param("sheetLength", "96")
                .param("sheetWidth", "48")
                .param("kerf", kerf)
                .param("trim", trim);
    }

    @Test
    void aKerfOfNothingIsALaserAndSaidOnTheDrawing() throws Exception {
        answer(sheet("3/4", "0", "0"), 302);
        answer(part("2", "48", "48", "ply_maple_34"), 302);
        assertThat(answer(get(base + "/buy-list"), 200).text()).contains("1 sheet of", "no kerf", "no trim");
    }

    @ParameterizedTest
    @CsvSource({
        "3/4, -1/8, 0, kerf, A length cannot be negative here.",
        "0, 1/8, 0, thickness, A size is more than nothing.",
        "3/4, 2 in, 0, kerf, check the unit",
        "3/4, 1/8, -1, trim, A length cannot be negative here.",
        "3/4, thin, 0, kerf, thin"
    })
    void aSheetThatCannotBeIsRefusedBesideItsBox(String thickness, String kerf, String trim, String box, String words)
            throws Exception {
        Document refused = answer(sheet(thickness, kerf, trim), 422);
        assertThat(refused.select("#" + box + "-error").text()).contains(words);
        assertThat(refused.select("#kerf").val()).isEqualTo(kerf);
    }

    @Test
    void aTrimThatLeavesNothingIsRefused() throws Exception {
        answer(
                post("/catalog/materials/" + material("ply_maple_34") + "/form")
                        .param("form", "sheet")
                        .param("thickness", "3/4")
                        .param("sheetLength", "10")
                        .param("sheetWidth", "10")
                        .param("kerf", "0")
                        .param("trim", "5"),
                422);
    }

    @ParameterizedTest
    @CsvSource({
        "97, 20, ply_maple_34, is larger than a sheet inside its trim",
        "20, 49, ply_maple_34, is larger than a sheet inside its trim",
        "17 ft, 4 1/4, crown_poplar, is longer than any length it is sold in",
        "20 ft, 4, poplar_44, is longer than any board"
    })
    void whatNoStockGivesIsNamedAndLeftOut(String length, String width, String material, String words)
            throws Exception {
        answer(part("1", length, width, material), 302);
        answer(part("1", "20", "3", material), 302);
        assertThat(answer(get(base + "/buy-list"), 200).text())
                .contains("Part 1, Panel of Case, " + words)
                .contains("it is not in these figures");
    }

    @ParameterizedTest
    @CsvSource({
        "0, 20, quantity, Give a whole number from 1 to 9999.",
        "99999999999, 20, quantity, Give a whole number from 1 to 9999.",
        "2.5, 20, quantity, Give a whole number from 1 to 9999.",
        "1, 0, length, A size is more than nothing.",
        "1, -3, length, A length cannot be negative here.",
        "1, 900 m, length, longer than 100 m",
        "1, 12 lb, length, 12 lb"
    })
    void aPartThatCannotBeIsRefusedBesideItsBox(String quantity, String length, String box, String words)
            throws Exception {
        Document refused = answer(part(quantity, length, "3", "poplar_44"), 422);
        assertThat(refused.select("#" + box + "-error").text()).contains(words);
        assertThat(refused.select("#length").val()).isEqualTo(length);
    }

    @Test
    void sizesInOtherUnitsAreRead() throws Exception {
        answer(part("1", "2 m", "30 cm", "ply_maple_34"), 302);
        answer(part("1", "3' 6\"", "254 mm", "ply_maple_34"), 302);
        assertThat(jdbc.sql("select length || ' ' || width from part order by position")
                        .query(String.class)
                        .list())
                .containsExactly("640000 96000", 42 * 64 * 127 + " 81280");
    }

    /** The limit is named, nothing is kept, and it is quick. */
    @Test
    void tenThousandPastedLinesAreRefusedInWordsAtOnce() throws Exception {
        StringBuilder list = new StringBuilder("name,qty,length,width\n");
        for (int n = 0; n < 10_000; n++) {
            list.append("P,1,9,9\n");
        }
        long begun = System.nanoTime();
        for (String where : new String[] {"/pasted-parts/preview", "/pasted-parts"}) {
            Document refused = answer(
                    post(piece + where).param("form", Ids.next().toString()).param("text", list.toString()), 422);
            assertThat(refused.select("#text-error").text())
                    .isEqualTo(
                            "There are 10000 lines; paste at most 500 at once, and put parts that are alike into one line.");
        }
        assertThat(Duration.ofNanos(System.nanoTime() - begun)).isLessThan(Duration.ofSeconds(20));
        String long_ = "name,qty,length,width\n" + "Part with a long name indeed,1,9,9\n".repeat(3_000);
        assertThat(answer(
                                post(piece + "/pasted-parts/preview")
                                        .param("form", Ids.next().toString())
                                        .param("text", long_),
                                422)
                        .select("#text-error")
                        .text())
                .contains("100,000 characters");
        assertThat(jdbc.sql("select count(*) from part").query(Integer.class).single())
                .isZero();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "dado / (ply - ply) | this divides by nothing.",
                "shelves + 1 | \"shelves\" uses itself; a setting may use the sizes and the settings above it.",
                "100000 * 100000 | which cannot be cut",
                "cases + 1 in | do not go together",
                "nowhere | \"nowhere\" is not known here.",
                "((((((((((((((((((((((((((((((((1)))))))))))))))))))))))))))))))) | too many brackets"
            })
    void anAnswerThatCannotBeWorkedOutIsSaidBesideItsBox(String typed, String words) throws Exception {
        Document refused = answer(post(piece + "/takeoff").param("set-shelves", typed), 422);
        assertThat(refused.text()).contains(words);
        assertThat(refused.select("#set-shelves").val()).isEqualTo(typed);
        if (!words.contains("cannot be cut")) {
            assertThat(refused.select("#set-shelves-error").text()).contains(words);
        }
        assertThat(jdbc.sql("select count(*) from part").query(Integer.class).single())
                .isZero();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "a + 1 in | Line 1, A: At character 1: \"a\" uses itself",
                "1 in / 0 | Line 1, A: At character 6: this divides by nothing.",
                "b | Line 1, A: At character 1: \"b\" is not known here."
            })
    void formulasAreTriedWithSizesAndToldByTheLine(String formula, String words) throws Exception {
        String text =
                "setting ~ a ~ A ~ FORMULA\nsetting ~ b ~ B ~ a\nmaterial ~ case ~ Case ~ ply_wo_34\npart ~ Board ~ case ~ 2 ~ width - a ~ depth";
        String typed = text.replace('~', '|').replace("FORMULA", formula);
        for (String where : new String[] {"/trial", ""}) {
            Document wrong = answer(post(formulas + where).param("text", typed).param("width", "30"), 422);
            assertThat(wrong.select(".advice").text()).contains(words, "setting | a | A | " + formula);
            assertThat(wrong.select("textarea").text()).contains("width - a");
            assertThat(wrong.select("#width").val()).isEqualTo("30");
        }
        Document right = answer(
                post(formulas + "/trial")
                        .param("text", typed.replace("| " + formula + "\n", "| 1 1/2 in\n"))
                        .param("width", "30")
                        .param("depth", "12"),
                200);
        assertThat(right.select("table").text()).contains("Board 2 28 1/2\" x 12\"");
        assertThat(answer(get(formulas), 200).text()).contains("The formulas that came along");
        Document missing = answer(
                post(formulas + "/trial")
                        .param("text", typed.replace("| " + formula + "\n", "| 1 1/2 in\n"))
                        .param("width", "30"),
                200);
        assertThat(missing.text()).contains("Board: At character 1: \"depth\" is not known here.");
        assertThat(answer(post(formulas + "/trial").param("text", typed).param("width", "wide"), 422)
                        .select("#width-error")
                        .text())
                .contains("wide");
    }
}
