package org.tallywright.measuring.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.catalog.CatalogSeed;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.photos.PhotoDesk;
import org.tallywright.photos.PhotoDetails;
import org.tallywright.photos.picture.SamplePhotos;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

/** Openings, air and solid parts on the pages of a job. */
@AppTest
class SiteMeasureWebTest {
    private static final Map<String, String> ALCOVE = Map.of(
            "place", "North bay",
            "measuredOn", "2025-01-02",
            "goodTo", "1/32",
            "backFloor", "61 3/8",
            "frontFloor", "5' 2-1/16\"",
            "depthLeft", "24",
            "depthRight", "24",
            "studs", "14 1/2\n30 1/2",
            "outlets", "lamp: 20 x 12 1/2",
            "reveals", "left casing: 3/16");

    @Autowired
    MockMvc mvc;

    @Autowired
    SampleJobs sample;

    @Autowired
    CatalogSeed catalog;

    @Autowired
    SamplePeople people;

    @Autowired
    PhotoDesk photos;

    @Autowired
    JdbcClient jdbc;

    private SignedIn ada;
    private JobRef job;
    private String base;

    @BeforeEach
    void openJob() {
        ada = people.owner();
        job = sample.running(ada, "Window seat");
        base = "/jobs/" + job.number();
    }

    /** Inch readings in a shop that has gone over to millimetres: no finer than its tape, its own examples, no unit twice. */
    @Test
    void speaksMillimetresInAMetricShop() throws Exception {
        UUID piece = sample.piece(job, "Window seat", "61", "18", "15", ada);
        UUID opening = Ids.next();
        answer(opening(opening).param("piece", piece.toString()), ada, 302);
        people.asShop(() -> jdbc.sql("update shop set units = 'metric'").update());
        Document page = answer(get(base + "/site-measure"), ada, 200);
        assertThat(page.text()).contains("Each reading good to \u00b1 0.8 mm");
        assertThat(page.select(".findings").text())
                .contains("The front is 17.5 mm wider than the back", "Build to 1559 mm", "over a piece 381 mm deep")
                .doesNotContain("\u2248");
        Document form = answer(get(base + "/openings/" + opening), ada, 200);
        assertThat(form.getElementById("depthLeft").val()).isEqualTo("609.6");
        assertThat(form.select(".hint").text()).contains("368", "876 x 1220").doesNotContain("14 1/2", "1/32");
        assertThat(answer(get(base + "/openings/new"), ada, 200)
                        .getElementById("goodTo")
                        .val())
                .isEqualTo("1");
    }

    @Test
    void saysWhatFollowsFromTheReadings() throws Exception {
        UUID piece = sample.piece(job, "Window seat", "61", "18", "15", ada);
        answer(opening(Ids.next()).param("piece", piece.toString()), ada, 302);
        Document page = answer(get(base + "/site-measure"), ada, 200);
        assertThat(page.select(".findings").text())
                .contains("The front is 11/16\" wider than the back: it opens to the front.")
                .contains("Build to 5' 1 3/8\", the narrowest place, less your fitting gap.")
                .contains("That holds if it is square and its walls are plumb;"
                        + " to know, read both diagonals and how far each wall leans.")
                .contains("over a piece 1' 3\" deep it tapers by 7/16\"");
        assertThat(figure(page, "Corner if one wall takes all")).isEqualTo("91.64\u00b0 \u00b1 0.11\u00b0");
        assertThat(page.select("details.figure").text())
                .contains("90 + atan(s / D)")
                .contains("Front, at the floor")
                .contains("5' 2 1/16\"");
        assertThat(page.select(".readings").text()).contains("lamp").contains("1' 8\" x 1' 1/2\"");
        // Exact units: 61 3/8 in = 3928/64.
        assertThat(text("select length from opening_reading where reading = 'back_floor'"))
                .isEqualTo(String.valueOf(3928 * 127));
        assertThat(answer(get(base + "/site-measure/sheet"), ada, 200).text())
                .contains("91.64\u00b0 \u00b1 0.11\u00b0");
        assertThat(answer(get(base), ada, 200).select("a[href$=/site-measure]")).isNotEmpty();
    }

    /** Front and back 38 1/2, the front 6 1/2 to the right: 32 goes in, of a piece half as deep 35 1/4. */
    @Test
    void buildsToWhatGoesInSquare() throws Exception {
        UUID piece = sample.piece(job, "Window seat", "38", "18", "12", ada);
        answer(
                post(base + "/openings")
                        .param("id", Ids.next().toString())
                        .param("place", "Bay")
                        .param("measuredOn", "2025-01-02")
                        .param("goodTo", "1/32")
                        .param("backFloor", "38 1/2")
                        .param("frontFloor", "38 1/2")
                        .param("depthLeft", "24")
                        .param("diagonalBackLeft", "51")
                        .param("diagonalBackRight", "40")
                        .param("piece", piece.toString()),
                ada,
                302);
        Document page = answer(get(base + "/site-measure"), ada, 200);
        assertThat(page.select(".findings").text())
                .contains("Build to 2' 11 1/4\", all that goes in square and plumb, less your fitting gap.")
                .contains("That holds if its walls are plumb; to know, read how far each wall leans.")
                .contains("The largest gap beside the piece is 3 1/4\"");
    }

    @Test
    void saysWhatABowedWallAndAFloorAskFor() throws Exception {
        UUID piece = sample.piece(job, "Window seat", "61", "18", "12", ada);
        answer(
                opening(Ids.next())
                        .param("piece", piece.toString())
                        .param("bowBack", "-3/8")
                        .param("bowBackOver", "61 3/8")
                        .param("floorFall", "1/4")
                        .param("floorOver", "61 3/8")
                        .param("floorFront", "1/4")
                        .param("floorFrontOver", "24"),
                ada,
                302);
        Document page = answer(get(base + "/site-measure"), ada, 200);
        assertThat(page.select(".findings").text())
                .contains(
                        "The back wall bulges by 3/8\" in the middle: the piece touches there; cut the scribe strip on it 21/32\" wide.")
                .contains("Under the piece the floor falls 1/8\" to the front.")
                .contains(
                        "Level from the back left corner, the highest: at the front right one the base stands up to 3/8\"");
        assertThat(figure(page, "Back wall out of straight")).isEqualTo("-3/8\" \u00b1 3/64\"");
        assertThat(answer(get(base + "/site-measure/sheet"), ada, 200).text())
                .contains("Out of straight", "Scribe strip at the back");

        Document refused = answer(
                opening(Ids.next())
                        .param("bowLeft", "1/4")
                        .param("floorFront", "2")
                        .param("floorFrontOver", "1"),
                ada,
                422);
        assertThat(refused.select("#bowSideOver-error").text()).contains("Say over what length the wall bows.");
        assertThat(refused.select("#floorFront-error").text()).contains("as much as the length it was read over");
    }

    /** The catalogue's cherry is known by its code; a shop's own material once the owner has said its wood. */
    @Test
    void offersTheWoodsOfTheCatalogueFirst() throws Exception {
        catalog.load();
        String path = base + "/solid-parts/new";
        assertThat(answer(get(path), ada, 200)
                        .select("select[name=species] option")
                        .eachText())
                .contains("Cherry, black (Cherry, 4/4, surfaced)")
                .anyMatch(wood -> wood.equals("Ash, white"));
        String fir = text("select id::text from material where code = 'fir_2x4'");
        String wood = "/catalog/materials/" + fir + "/wood";
        assertThat(answer(get(wood), ada, 200).select("option[selected]").text())
                .isEqualTo("None of these");
        answer(post(wood).param("species", "oak"), ada, 422);
        for (int n = 0; n < 2; n++) {
            answer(post(wood).param("species", "white_fir"), ada, 302);
        }
        assertThat(answer(get(path), ada, 200)
                        .select("select[name=species] option")
                        .eachText())
                .contains("White fir (Fir framing, 2 x 4, for bases)");
        answer(post(wood).param("species", "douglas_fir_coast"), ada, 409);
        answer(post(wood).param("species", "none").param("version", "0"), ada, 302);
        assertThat(answer(get(path), ada, 200)
                        .select("select[name=species] option")
                        .eachText())
                .contains("White fir");
        answer(post(wood).param("species", "white_fir").param("version", "1"), people.lead(), 403);
        answer(get("/catalog/materials/" + Ids.next() + "/wood"), ada, 404);
    }

    /** The way to the form of photos carries piece and place along, and the piece's photos come back to the opening. */
    @Test
    void showsThePhotosOfThePieceAtItsOpening() throws Exception {
        UUID piece = sample.piece(job, "Window seat", "61", "18", "15", ada);
        UUID other = sample.piece(job, "Bench", "61", "18", "15", ada);
        answer(opening(Ids.next()).param("piece", piece.toString()), ada, 302);
        photos.add(job.id(), SamplePhotos.jpeg(1), new PhotoDetails("Old plaster", piece, false), ada);
        photos.add(job.id(), SamplePhotos.jpeg(2), new PhotoDetails("Elsewhere", other, false), ada);
        Document page = answer(get(base + "/site-measure"), ada, 200);
        assertThat(page.select(".opening .prints img").eachAttr("alt")).containsExactly("Old plaster");
        String add = page.select(".opening a[href*=/photos?]").attr("href");
        Document form = answer(get(java.net.URI.create(add)), ada, 200);
        assertThat(form.select("input[name=caption]").val()).isEqualTo("North bay");
        assertThat(form.select("select[name=piece] option[selected]").text()).isEqualTo("Window seat");
    }

    @Test
    void refusesBesideTheBoxAndKeepsWhatWasTyped() throws Exception {
        Document again = answer(
                opening(Ids.next())
                        .param("heightLeft", "200 m")
                        .param("cornerLeftBack", "3")
                        .param("cornerLeftSide", "4")
                        .param("cornerLeftAcross", "7 1/2")
                        .param("cornerRightBack", "3")
                        .param("leanLeft", "-1/4"),
                ada,
                422);
        assertThat(again.select("#heightLeft-error").text()).contains("longer than 100 m");
        assertThat(again.select("#heightLeft").val()).isEqualTo("200 m");
        assertThat(again.select("#cornerLeftAcross-error").text()).contains("make no corner");
        assertThat(again.select("#cornerRightSide-error").text()).contains("all three sides");
        assertThat(again.select("#leanOver-error").text()).contains("over what length");
        assertThat(again.select("#frontFloor").val()).isEqualTo("5' 2-1/16\"");
        Document bad = answer(
                post(base + "/openings")
                        .param("id", Ids.next().toString())
                        .param("backFloor", "-4")
                        .param("depthLeft", "0")
                        .param("goodTo", "2")
                        .param("measuredOn", "soon")
                        .param("outlets", "14 1/2"),
                ada,
                422);
        assertThat(bad.select("#backFloor-error").text()).contains("cannot be negative");
        assertThat(bad.select("#depthLeft-error").text()).isEqualTo("A size is more than nothing.");
        assertThat(bad.select("#goodTo-error").text()).contains("a guess");
        assertThat(bad.select("#measuredOn-error").text()).contains("2026-11-25");
        assertThat(bad.select("#place-error").text()).isEqualTo("Please fill this in.");
        assertThat(bad.select("#outlets-error").text()).startsWith("Line 1: write how far");
        answer(opening(Ids.next()).param("piece", Ids.next().toString()), ada, 422);
        assertThat(count("opening")).isZero();
    }

    @Test
    void changesWhatWasReadAndMeetsALostUpdate() throws Exception {
        UUID id = Ids.next();
        answer(opening(id), ada, 302);
        answer(opening(id), ada, 302);
        assertThat(count("opening")).isEqualTo(1);
        Document form = answer(get(base + "/openings/" + id), ada, 200);
        assertThat(form.select("#frontFloor").val()).isEqualTo("5' 2 1/16\"");
        assertThat(form.select("#outlets").val()).isEqualTo("lamp: 1' 8\" x 1' 1/2\"");
        String version = form.select("form [name=version]").val();
        answer(edit(id, "62 1/4", version), ada, 302);
        assertThat(text("select length from opening_reading where reading = 'front_floor'"))
                .isEqualTo(String.valueOf(62 * 64 * 127 + 16 * 127));
        assertThat(answer(edit(id, "63", version), ada, 409).text()).contains("Front, at the floor");
        assertThat(text("select count(*) from audit_entry where subject = 'opening_reading' and act = 'update'"))
                .isEqualTo("1");
        answer(post(base + "/openings/" + id + "/removal"), ada, 302);
        assertThat(count("opening_reading")).isZero();
        answer(get(base + "/openings/" + id), ada, 404);
    }

    @Test
    void reckonsMovementInTheAirOfTheSite() throws Exception {
        answer(air("68", "65"), ada, 302);
        answer(
                post(base + "/solid-parts")
                        .param("id", Ids.next().toString())
                        .param("name", "Seat top")
                        .param("species", "red_oak_commercial")
                        .param("cut", "flat")
                        .param("width", "20")
                        .param("moisture", "8"),
                ada,
                302);
        Document page = answer(get(base + "/site-measure"), ada, 200);
        assertThat(page.text()).contains("68.0 \u00b0F, 65 % humidity").contains("12.0 % \u00b1 ");
        // 20 in x .00369 x 4 points = .295 in, to the nearest 1/32.
        assertThat(page.text())
                .contains("grows 9/32\" \u00b1 ")
                .contains("equation 13-2")
                .contains("Leave room to grow");
        assertThat(page.text()).contains("never glue it across the grain").contains("Common practice, no source.");
        assertThat(answer(air("700", "-5"), ada, 422).select(".error").eachText())
                .anyMatch(t -> t.contains("-40 to 140 F"))
                .anyMatch(t -> t.contains("in percent"));
        assertThat(answer(air("21 C", "101"), ada, 422)
                        .select("#humidity-error")
                        .text())
                .contains("0 to 100");
        answer(air("20 F", "40"), ada, 302);
        assertThat(answer(get(base + "/site-measure"), ada, 200).text()).contains("no figure");
    }

    @Test
    void showsTheHelperTheMeasuresAndTakesHis() throws Exception {
        SignedIn helper = people.helper();
        answer(opening(Ids.next()), helper, 302);
        assertThat(answer(get(base + "/site-measure"), helper, 200).select(".findings"))
                .isNotEmpty();
        answer(get(base + "/site-measure/sheet"), helper, 200);
        answer(get(base + "/site-measure"), people.bookkeeper(), 403);
    }

    @Test
    void keepsTheDatabaseFromWhatIsNoMeasure() throws Exception {
        UUID id = Ids.next();
        answer(opening(id), ada, 302);
        assertThatThrownBy(() -> people.asShop(() -> jdbc.sql(
                                "insert into opening_reading (opening_id, reading, length) values (?, 'back_top', -1)")
                        .param(id)
                        .update()))
                .isInstanceOf(DataIntegrityViolationException.class)
                .hasMessageContaining("opening_reading_in_range");
        assertThatThrownBy(() -> people.asShop(
                        () -> jdbc.sql("""
                                insert into solid_part (id, job_id, name, species, cut, width, moisture, version)
                                values (?, ?, 'Top', 'cherry_black', 'flat', 1, 31, 0)""").params(Ids.next(), job.id()).update()))
                .isInstanceOf(DataIntegrityViolationException.class)
                .hasMessageContaining("solid_part_moisture_in_range");
    }

    private MockHttpServletRequestBuilder opening(UUID id) {
        MockHttpServletRequestBuilder request = post(base + "/openings").param("id", id.toString());
        ALCOVE.forEach(request::param);
        return request;
    }

    private MockHttpServletRequestBuilder edit(UUID id, String front, String version) {
        MockHttpServletRequestBuilder request = post(base + "/openings/" + id)
                .param("id", id.toString())
                .param("version", version)
                .param("frontFloor", front);
        ALCOVE.entrySet().stream()
                .filter(e -> !e.getKey().equals("frontFloor"))
                .forEach(e -> request.param(e.getKey(), e.getValue()));
        return request;
    }

    private MockHttpServletRequestBuilder air(String temperature, String humidity) {
        return post(base + "/air-readings")
                .param("id", Ids.next().toString())
                .param("place", "Living room")
                .param("takenOn", "2025-01-02")
                .param("temperature", temperature)
                .param("humidity", humidity);
    }

    private static String figure(Document page, String name) {
        return page.select("details.figure summary:contains(" + name + ") .figure-value")
                .text();
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

    private String text(String sql) {
        return jdbc.sql(sql).query(String.class).single();
    }
}
