package org.tallywright.costing.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.net.URI;
import java.time.Duration;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.select.Elements;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.costing.SampleCosts;
import org.tallywright.costing.SampleCosts.Seat;
import org.tallywright.jobs.Closing;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The review's page: whose it is, what it shows, and that a frozen one never changes. */
@AppTest
class ReviewWebTest {
    /** What nobody but the owner may read: cost, margin, labour, price, planned cost. */
    private static final String[] FIGURES = {"1,014.75", "185.25", "260.50", "1,200.00", "943.50", "83.86"};

    @Autowired
    MockMvc mvc;

    @Autowired
    SampleCosts sample;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SamplePeople people;

    @Autowired
    JobDesk desk;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TestClock clock;

    @Test
    void laysTheJobBesideItsBid() throws Exception {
        Seat seat = sample.worked();
        Document page = review(seat, "");
        assertThat(page.select(".review").text())
                .contains(
                        "To date, 25 Nov 2026", "26-001 A, $1,200.00", FIGURES[0], FIGURES[1], FIGURES[2], FIGURES[5]);
        assertThat(page.select(".titleblock").text()).contains("Margin now $185.25");
        assertThat(row(page, "Rip hardwood")).contains("1 h 30", "2 h", "+30 min", "+33 %", "100 → 120 lf");
        assertThat(row(page, "Brush clear coat")).contains("left out", "2 h", "-2 h");
        assertThat(row(page, "Red oak, 5/4"))
                .contains("30", "0.60", "50", "$520.00", "33", "0.66", "$601.00", "+$81.00");
        assertThat(row(page, "Took longer")).contains("-$13.20");
        assertThat(row(page, "Cost beyond the plan")).contains("+$71.25");
        assertThat(page.select(".caution").text()).contains("20 min");
        assertThat(page.select("a[href='/jobs/26-001/hours?task=" + seat.rip() + "']"))
                .isNotEmpty();
        assertThat(page.select("a[href='/jobs/26-001/hours?task=none&class=supply+run']"))
                .isNotEmpty();
        assertThat(page.select("a[href='/bids/" + seat.bid() + "']")).isNotEmpty();
        String material = page.select("a:containsOwn(Red oak, 5/4)").attr("href");
        assertThat(material).startsWith("/jobs/26-001/materials#m-");
        String id = material.substring(material.indexOf('#') + 1);
        assertThat(answer(get("/jobs/26-001/materials"), seat.owner(), 200).getElementById(id))
                .isNotNull();
        String again = page.select(".again a").attr("href");
        assertThat(answer(get(again), seat.owner(), 200).text()).contains("rework");
    }

    /** Every figure at the top and every cause leads to what made it, and what it leads to is there. */
    @Test
    void opensEachFigureToWhatIsBehindIt() throws Exception {
        Seat seat = sample.worked();
        everyFigureOpens(review(seat, ""), seat);
        close(seat);
        everyFigureOpens(review(seat, ""), seat);
    }

    private void everyFigureOpens(Document page, Seat seat) throws Exception {
        Elements figures = page.select(".figures details.figure");
        Elements causes = page.select(".review details.opens:not(:has(summary:containsOwn(Rounding)))");
        assertThat(figures).hasSizeGreaterThanOrEqualTo(6);
        assertThat(causes).hasSizeGreaterThanOrEqualTo(6);
        Set<String> links = new TreeSet<>();
        for (Element figure : figures) {
            assertThat(figure.select(".behind a")).as(figure.text()).isNotEmpty();
            links.addAll(figure.select(".behind a").eachAttr("href"));
        }
        for (Element cause : causes) {
            assertThat(cause.select(".behind a")).as(cause.text()).isNotEmpty();
            links.addAll(cause.select(".behind a").eachAttr("href"));
        }
        for (String link : links) {
            if (!link.startsWith("/bids/")) {
                Document behind = answer(get(URI.create(link.replace("+", "%20"))), seat.owner(), 200);
                String anchor = link.contains("#") ? link.substring(link.indexOf('#') + 1) : "main";
                assertThat(behind.getElementById(anchor)).as(link).isNotNull();
            }
        }
        assertThat(links).contains("/bids/" + seat.bid() + "/sums");
    }

    @Test
    void saysWhoMadeHowMuchOfACause() throws Exception {
        Document page = review(sample.worked(), "");
        // See SampleCosts for the figures.
        // SampleCosts.
        assertThat(behind(page, "Quantity: the estimator missed")).contains("Rip hardwood (Window seat)");
        assertThat(behind(page, "Rework, call-backs, standby"))
                .contains("Glue up panel (Window seat)")
                .doesNotContain("Rip");
        assertThat(behind(page, "Hours on no estimate line")).contains("Travel: travel", "supply run", "office");
        assertThat(behind(page, "Overhead")).contains("7 h 05 x $15.00", "+$106.25", "-$97.50");
        assertThat(behind(page, "Material price")).contains("Red oak, 5/4");
        assertThat(behind(page, "Other costs")).contains("Delivery", "$42.00, planned $40.00", "+$2.00");
        assertThat(page.select("details.figure:contains(Hours) .behind").text())
                .contains("Direct 4 h 30", "Planned, 26-001 A 6 h 30");
    }

    private static String behind(Document page, String cause) {
        return page.select("details.opens:has(summary:containsOwn(" + cause + ")) .behind")
                .text();
    }

    @Test
    void isForTheOwnerOnly() throws Exception {
        Seat seat = sample.worked();
        SignedIn bookkeeper = people.person("Mirel Oake", Role.BOOKKEEPER);
        for (SignedIn other : new SignedIn[] {seat.lead(), seat.helper(), bookkeeper}) {
            assertThat(answer(get("/jobs/26-001/review"), other, 403).text()).doesNotContain(FIGURES);
            assertThat(answer(post("/jobs/26-001/review/lesson"), other, 403).text())
                    .doesNotContain(FIGURES);
        }
        for (SignedIn other : new SignedIn[] {seat.lead(), seat.helper()}) {
            assertThat(answer(get("/jobs/26-001"), other, 200).html())
                    .doesNotContain(FIGURES)
                    .doesNotContain("Margin");
        }
    }

    @Test
    void staysTheSameWhateverChangesAfterTheClosing() throws Exception {
        Seat seat = sample.worked();
        close(seat);
        String before = article(seat, "");
        assertThat(before).contains("Frozen at the closing on 25 Nov 2026 by Ada Fenn", "$185.25");
        sample.inTrail(seat.owner(), () -> {
            jdbc.sql("update wage set wage_amount = 99, burden_percent = 77").update();
            jdbc.sql("update person set name = name || ' renamed'").update();
            jdbc.sql("update shop set overhead_rate = 88, currency = 'EUR', units = 'metric'")
                    .update();
            jdbc.sql("update task set name = 'Renamed', unit = 'each', quantity_done = 7")
                    .update();
            jdbc.sql("update stage set name = 'Renamed ' || position").update();
            jdbc.sql("update material set name = name || ' renamed', unit = 'm3', material_group = 'other'")
                    .update();
            return jdbc.sql("update purchase set amount = amount + 1").update();
        });
        assertThat(article(seat, "").replace("by Ada Fenn renamed", "by Ada Fenn"))
                .isEqualTo(before);
        assertThat(review(seat, "").select(".titleblock").text())
                .contains("Margin")
                .contains("185.25");
    }

    @Test
    void showsCallBacksBesideTheFrozenFigures() throws Exception {
        Seat seat = sample.worked();
        close(seat);
        String before = article(seat, "");
        clock.advance(Duration.ofDays(3));
        sample.entry(
                seat.job(),
                null,
                seat.owner(),
                SampleCosts.LATER.plusDays(16),
                "call-back",
                60,
                "",
                TestClock.START.plus(Duration.ofDays(3)));
        assertThat(article(seat, "")).isEqualTo(before);
        // An hour at 55 and 15 of overhead: 185.25 - 70.00.
        assertThat(review(seat, "").text()).contains("1 h since the closing cost $70.00", "the margin is $115.25");
    }

    @Test
    void keepsEachClosingOfAReopenedJob() throws Exception {
        Seat seat = sample.worked();
        close(seat);
        String first = article(seat, "?closing=1");
        desk.reopen(seat.job().id(), "A shelf was forgotten", seat.owner().personId());
        Document running = review(seat, "");
        assertThat(running.select(".review").text()).contains("To date");
        assertThat(running.text()).contains("closing 1, 25 Nov 2026");
        sample.entry(seat.job(), seat.rip(), seat.owner(), SampleCosts.LATER, "direct", 60, "");
        close(seat);
        assertThat(article(seat, "?closing=1")).isEqualTo(first);
        // 55.00 and 15.00 more than the first time.
        assertThat(article(seat, "")).contains("$1,084.75").isEqualTo(article(seat, "?closing=2"));
    }

    @Test
    void keepsALessonBesideTheFigures() throws Exception {
        Seat seat = sample.worked();
        close(seat);
        String before = article(seat, "");
        UUID id = jdbc.sql("select id from review").query(UUID.class).single();
        MockHttpServletRequestBuilder lesson = lesson(id, "0", "Measure the wall before the bid.");
        mvc.perform(lesson.with(signedIn(seat.owner())).with(csrf()))
                .andExpect(redirectedUrl("/jobs/26-001/review?closing=1"));
        mvc.perform(lesson(id, "0", "Measure the wall before the bid.")
                        .with(signedIn(seat.owner()))
                        .with(csrf()))
                .andExpect(status().is3xxRedirection());
        assertThat(review(seat, "").select("#lesson").val()).isEqualTo("Measure the wall before the bid.");
        assertThat(article(seat, "")).isEqualTo(before);
        Document stale = answer(lesson(id, "0", "Something else."), seat.owner(), 409);
        assertThat(stale.text()).contains("Measure the wall before the bid.", "Something else.");
        Document refused = answer(lesson(id, "1", "x".repeat(501)), seat.owner(), 422);
        assertThat(refused.select("#lesson").val()).hasSize(501);
        assertThat(refused.select("#lesson-error").text()).isNotEmpty();
        answer(lesson(UUID.randomUUID(), "0", "Nobody's."), seat.owner(), 404);
    }

    private static MockHttpServletRequestBuilder lesson(UUID id, String version, String words) {
        return post("/jobs/26-001/review/lesson")
                .param("id", id.toString())
                .param("version", version)
                .param("lesson", words);
    }

    @Test
    void saysWhatToDoWhereThereIsNothingYet() throws Exception {
        SignedIn owner = people.owner();
        jobs.lead(owner, "Pantry");
        Document page = answer(get("/jobs/26-001/review"), owner, 200);
        assertThat(page.text()).contains("Nothing to review yet");
        answer(get("/jobs/26-001/review?closing=1"), owner, 404);
        answer(get("/jobs/26-077/review"), owner, 404);
        answer(get("/jobs/26-001/review?closing=x"), owner, 404);
    }

    private void close(Seat seat) {
        desk.close(
                seat.job().id(),
                new Closing(Map.of(seat.travel(), Closing.TaskAnswer.DONE), true, true),
                seat.owner().personId());
    }

    private static String row(Document page, String name) {
        return page.select("tr:has(th:contains(" + name + "))").text();
    }

    private Document review(Seat seat, String query) throws Exception {
        return answer(get("/jobs/26-001/review" + query), seat.owner(), 200);
    }

    private String article(Seat seat, String query) throws Exception {
        return review(seat, query).select("article.review").outerHtml();
    }

    private Document answer(MockHttpServletRequestBuilder request, SignedIn me, int status) throws Exception {
        return Jsoup.parse(mvc.perform(request.with(signedIn(me)).with(csrf()))
                .andExpect(status().is(status))
                .andReturn()
                .getResponse()
                .getContentAsString());
    }
}
