package org.tallywright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tallywright.web.stick.SampleSticks;

/** The page with every part of the look; it is written to target/look so that it can be opened and looked at. */
class LookTest {
    private static final String LONG = "Window seat, two bookcases, a plate rail and ".repeat(6) + "x".repeat(80);
    private static Document page;

    @BeforeAll
    static void render() throws IOException {
        String html = LookPages.render("style", model());
        Path target = Files.createDirectories(Path.of("target/look"));
        Files.writeString(target.resolve("style.html"), html);
        page = Jsoup.parse(html);
    }

    @ParameterizedTest
    @ValueSource(strings = {"plain", "paper"})
    void framesPagesWithoutNavigationOrAShell(String template) throws IOException {
        String html = LookPages.render(template, Map.of());
        Files.writeString(Path.of("target/look", template + ".html"), html);
        Document other = Jsoup.parse(html);
        assertThat(other.select("h1")).hasSize(1);
        assertThat(other.select("main#main")).hasSize(1);
        assertThat(other.select(".nav, form[action=/sign-out]")).isEmpty();
        assertThat(other.select("[type=password]").val()).isEmpty();
    }

    /** A phone's first view is to stay under 60 kB; a page's own HTML needs up to 25 kB, 7 kB of it after compression. */
    @Test
    void bundlesEverySheet() throws IOException {
        String all = new String(StyleBundle.content(), StandardCharsets.UTF_8);
        try (var files = Files.list(Path.of("src/main/resources/static/css"))) {
            for (Path file : files.toList()) {
                assertThat(all).as(file.toString()).contains(Files.readString(file));
            }
        }
        assertThat(all).startsWith(Files.readString(Path.of("src/main/resources/static/css/tokens.css")));
    }

    @Test
    void leavesRoomForThePage() throws IOException {
        byte[] sheets = StyleBundle.content();
        long plain = sheets.length;
        long sent = sent(sheets);
        try (var files = Files.list(Path.of("src/main/resources/static/js"))) {
            for (Path file : files.toList()) {
                byte[] bytes = Files.readAllBytes(file);
                plain += bytes.length;
                sent += sent(bytes);
            }
        }
        assertThat(plain).as("bytes before compression").isLessThan(104_000);
        assertThat(sent).as("bytes sent").isLessThan(32_000);
    }

    private static long sent(byte[] bytes) throws IOException {
        var packed = new ByteArrayOutputStream();
        try (var gzip = new GZIPOutputStream(packed)) {
            gzip.write(bytes);
        }
        // The server leaves files under 512 bytes as they are.
        return bytes.length < 512 ? bytes.length : packed.size();
    }

    @Test
    void linksTheSheetsAndEveryScriptThatThereIs() throws IOException {
        assertThat(page.head().html()).contains("/css/" + StyleBundle.NAME);
        try (var files = Files.list(Path.of("src/main/resources/static/js"))) {
            for (Path file : files.toList()) {
                assertThat(page.head().html()).contains("/js/" + file.getFileName());
            }
        }
    }

    @Test
    void hasOneHeadingAndOneMain() {
        assertThat(page.select("h1")).hasSize(1);
        assertThat(page.select("main#main")).hasSize(1);
        assertThat(page.select("a.skip[href=#main]")).hasSize(1);
    }

    @Test
    void namesEveryBoxOnce() {
        List<String> ids = page.select("[id]").eachAttr("id");
        assertThat(ids).doesNotHaveDuplicates();
        for (var box : page.select("input:not([type=hidden]), select, textarea")) {
            assertThat(page.select("label[for='" + box.id() + "']"))
                    .as(box.outerHtml())
                    .hasSize(1);
        }
    }

    @Test
    void pointsOnlyAtWhatIsThere() {
        var missing = new ArrayList<String>();
        for (var described : page.select("[aria-describedby]")) {
            for (String id : described.attr("aria-describedby").split(" ")) {
                if (page.getElementById(id) == null) missing.add(id);
            }
        }
        for (var link : page.select(".summary a")) {
            String id = link.attr("href").substring(1);
            if (page.getElementById(id) == null) missing.add(id);
        }
        assertThat(missing).isEmpty();
    }

    @Test
    void keepsWhatWasTypedAndEscapesIt() {
        assertThat(page.getElementById("title").val()).isEqualTo(LONG);
        assertThat(page.getElementById("est").val()).isEqualTo("six");
        assertThat(page.getElementById("est").attr("aria-invalid")).isEqualTo("true");
        assertThat(page.getElementById("begun").attr("type")).isEqualTo("text");
        assertThat(page.getElementById("promised").attr("type")).isEqualTo("date");
        assertThat(page.getElementById("notes").wholeText()).contains("<b>not bold</b>");
        assertThat(page.select("#stage option[selected]").val()).isEqualTo("mill");
        assertThat(page.getElementById("needless").hasAttr("checked")).isTrue();
    }

    @Test
    void marksThePlaceAndHidesNothingOfTheRole() {
        assertThat(page.select(".nav [aria-current=page]").text()).isEqualTo("Jobs");
        assertThat(page.select(".tabs [aria-current=page]").text()).isEqualTo("Job");
        assertThat(page.select("form[action=/sign-out] button")).hasSize(1);
    }

    @Test
    void keepsParametersWhenSortingAndPaging() {
        assertThat(page.select("th[aria-sort=ascending] a").attr("href")).isEqualTo("/jobs?state=running&sort=-task");
        assertThat(page.select(".pager a[rel=next]").attr("href")).isEqualTo("/jobs?state=running&page=3");
    }

    private static Map<String, Object> model() {
        var model = new LinkedHashMap<String, Object>();
        model.put(
                "shell",
                new Shell(
                        "Fenn Built-ins",
                        "Ada Fenn",
                        "0199aaaa-bbbb-7ccc-8ddd-eeeeeeeeeeee",
                        "owner",
                        List.of(
                                new NavItem("today", "Today", "/"),
                                new NavItem("jobs", "Jobs", "/jobs"),
                                new NavItem("rates", "Rates", "/rates")),
                        List.of(new NavItem("crew", "Crew", "/crew"), new NavItem("shop", "Shop", "/shop"))));
        model.put(
                "tabs",
                List.of(new NavItem("job", "Job", "/jobs/26-014", true), new NavItem("hours", "Hours", "/hours")));
        model.put("flash", "The day is saved: 5 h 35.");
        model.put(
                "block",
                new TitleBlock(
                        "26-014",
                        "Window seat and two bookcases, north bay",
                        "Ada Fenn, Harrow Lane 9",
                        List.of(
                                new TitleBlock.Cell("Stage", "Build"),
                                new TitleBlock.Cell("Promised", "Fri 11 Dec"),
                                new TitleBlock.Cell("Logged", "31 h 15 of 58 h", "/jobs/26-014/hours"),
                                new TitleBlock.Cell("Forecast", "66 h (58 to 77)"),
                                new TitleBlock.Cell("Bid", "26-014 B", "/bids/26-014-B")),
                        List.of(
                                new Tag(Tag.Sort.WAIT, "edge banding curing until 18:40"),
                                new Tag(Tag.Sort.OVER, "Mill 3 h over"))));
        var errors = new LinkedHashMap<String, String>();
        errors.put("title", "The name is too long: 200 letters at the most.");
        errors.put("est", "“six” is not hours. Write 6, 6:30 or 45m.");
        errors.put("hourClass", "Say what sort of hours these were.");
        model.put("errors", errors);
        model.put("long", LONG);
        model.put("lengthHint", "31 5/8, 4' 3-7/8\" or 803 mm");
        model.put("sticks", SampleSticks.all());
        var stages = new LinkedHashMap<String, String>();
        List.of("Measure", "Bid", "Buy", "Mill", "Build").forEach(s -> stages.put(s.toLowerCase(), s));
        model.put("stages", stages);
        model.put("classes", Map.of("direct", "Direct", "rework", "Rework", "travel", "Travel"));
        return model;
    }
}
