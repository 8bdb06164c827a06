package org.tallywright.daylog.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.daylog.SampleDays.TODAY;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import org.tallywright.AppTest;
import org.tallywright.daylog.SampleDays;
import org.tallywright.daylog.SampleDays.SampleJob;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

@AppTest
class DaySheetWebTest {
    @Autowired
    JdbcClient jdbc;

    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleDays days;

    SignedIn ada;
    SignedIn jonas;
    SampleJob seat;
    SampleJob stair;

    @BeforeEach
    void twoJobsAreRunning() {
        ada = people.owner();
        jonas = people.helper();
        seat = days.job("Window seat, north bay", "Glue up seat top", "Finish sand", "site:Scribe to the wall");
        stair = days.job("Stair treads", "Cut treads");
    }

    @Test
    void opensOnTodayWithTheLikelyTasksAndABoxEach() throws Exception {
        days.curing(seat, "Glue up seat top", "glue sets", Duration.ofHours(3));

        Document page = page("/", ada);

        assertThat(page.selectFirst("h1").text()).isEqualTo("Today, Wednesday 25 November 2026");
        assertThat(page.select(".row > label").eachText())
                .anyMatch(t -> t.startsWith("Glue up seat top"))
                .anyMatch(t -> t.startsWith("Cut treads"));
        assertThat(page.select("input[data-hours]")).hasSize(5);
        assertThat(page.text()).contains("glue sets").contains("until 16:40");
    }

    @Test
    void savesAWholeDayOnSeveralJobsAtOnce() throws Exception {
        SheetForm form = form("/", ada)
                .type(seat.task("Glue up seat top"), "time", "2h30")
                .type(seat.task("Finish sand"), "time", "45m")
                .type(stair.task("Cut treads"), "time", "8:00-12:15");
        form.row("shop:maintenance", "direct", "30m");

        send(form, "/days/2026-11-25", ada, 302).andReturn();

        assertThat(days.minutes(ada, TODAY)).isEqualTo(150 + 45 + 255 + 30);
        Document page = page("/", ada);
        assertThat(page.select(".row[data-state=saved] input[data-hours]").eachAttr("value"))
                .containsExactlyInAnyOrder("2 h 30", "45 min", "08:00-12:15", "30 min");
        assertThat(page.selectFirst("[data-day-total]").text()).isEqualTo("8 h");
    }

    @Test
    void goesBackToTodayAfterTheSave() throws Exception {
        mvc.perform(form("/", ada)
                        .type(seat.task("Finish sand"), "time", "1")
                        .sentTo("/days/2026-11-25")
                        .with(signedIn(ada)))
                .andExpect(redirectedUrl("/"));
        SheetForm other = new SheetForm();
        other.row("job:" + seat.id(), "office", "1");
        mvc.perform(other.sentTo("/days/2026-11-24").with(signedIn(ada))).andExpect(redirectedUrl("/days/2026-11-24"));
    }

    @Test
    void aDoubleSubmitLogsOnce() throws Exception {
        SheetForm form = form("/", ada).type(seat.task("Finish sand"), "time", "2");
        send(form, "/days/2026-11-25", ada, 302);
        send(form, "/days/2026-11-25", ada, 302);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(120);
    }

    @Test
    void savesAllRowsOrNoneAndKeepsEverythingTyped() throws Exception {
        SheetForm form = form("/", ada)
                .type(seat.task("Glue up seat top"), "time", "2h30")
                .type(seat.task("Finish sand"), "time", "a while")
                .type(seat.task("Finish sand"), "note", "north side");

        Document page = sent(form, "/days/2026-11-25", ada, 422);

        assertThat(days.minutes(ada, TODAY)).isZero();
        assertThat(page.select("input[data-hours]").eachAttr("value")).contains("2h30", "a while");
        assertThat(page.select("input[value='north side']")).hasSize(1);
        assertThat(page.select(".row[data-state=refused] .error").text()).contains("\"a while\"");
        assertThat(page.select("[aria-invalid=true]")).hasSize(1);
    }

    @Test
    void keepsTheSheetWhenOneBoxHoldsFarTooMuch() throws Exception {
        String much = "north side ".repeat(600);
        SheetForm form = form("/", ada)
                .type(seat.task("Glue up seat top"), "time", "2h30")
                .type(seat.task("Finish sand"), "time", "45m")
                .type(seat.task("Finish sand"), "note", much);

        Document page = sent(form, "/days/2026-11-25", ada, 422);

        assertThat(days.minutes(ada, TODAY)).isZero();
        assertThat(page.select("input[data-hours]").eachAttr("value")).contains("2h30", "45m");
        assertThat(page.select("input[name$=.note]").eachAttr("value")).contains(much);
        assertThat(page.select(".row[data-state=refused] .error").text()).contains("too long");
    }

    @Test
    void keepsAFarTooLongLineBesideTheRows() throws Exception {
        String much = "sanding 45m, ".repeat(400);
        SheetForm form = form("/", ada)
                .type(seat.task("Glue up seat top"), "time", "2h30")
                .set("line", much);

        Document page = sent(form, "/days/2026-11-25", ada, 422);

        assertThat(days.minutes(ada, TODAY)).isZero();
        assertThat(page.select("input[data-hours]").eachAttr("value")).contains("2h30");
        assertThat(page.selectFirst("#line").val()).isEqualTo(much);
        assertThat(page.selectFirst("#line-error").text()).contains("too much for one line");
    }

    @Test
    void correctsASavedRowAndRefusesAnOldVersion() throws Exception {
        UUID id = days.logged(ada, TODAY, seat, "Finish sand", 120);
        SheetForm first = form("/", ada);
        SheetForm second = form("/", ada);

        send(first.type(seat.task("Finish sand"), "time", "3"), "/days/2026-11-25", ada, 302);
        Document page = sent(second.type(seat.task("Finish sand"), "time", "4"), "/days/2026-11-25", ada, 409);

        assertThat(days.minutes(ada, TODAY)).isEqualTo(180);
        assertThat(page.text()).contains("Changed meanwhile").contains("3 h");
        assertThat(page.select("input[data-hours]").eachAttr("value")).contains("4");
        assertThat(days.trailOf(id)).containsExactly("insert", "update");

        send(SheetForm.of(page.outerHtml()), "/days/2026-11-25", ada, 302);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(240);
    }

    @Test
    void asksBeforeAnEmptiedBoxTakesHoursOffAndNeverBringsThemBackByARepeat() throws Exception {
        UUID id = Ids.next();
        SheetForm creation = new SheetForm().row(id, "", "task:" + seat.task("Finish sand"), "direct", "2");
        send(creation, "/days/2026-11-25", ada, 302);

        Document asked = sent(form("/", ada).type(seat.task("Finish sand"), "time", ""), "/days/2026-11-25", ada, 422);
        assertThat(asked.text()).contains("take 2 h on Finish sand");
        assertThat(days.minutes(ada, TODAY)).isEqualTo(120);

        send(answer(asked), "/days/2026-11-25", ada, 302);
        assertThat(days.minutes(ada, TODAY)).isZero();
        assertThat(days.trailOf(id)).containsExactly("insert", "delete");

        Document late = sent(creation, "/days/2026-11-25", ada, 422);
        assertThat(late.text()).contains("taken off the day");
        assertThat(days.minutes(ada, TODAY)).isZero();

        send(SheetForm.of(late.outerHtml()), "/days/2026-11-25", ada, 302);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(120);
    }

    @Test
    void savesALongDayAndAsksAboutItOnce() throws Exception {
        SheetForm form = new SheetForm();
        form.row("task:" + seat.task("Finish sand"), "direct", "8");
        form.row("task:" + stair.task("Cut treads"), "direct", "7");
        send(form, "/days/2026-11-25", ada, 302);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(900);
        Document asked = page("/", ada);
        assertThat(asked.select(".ask").text()).contains("The day comes to 15 h");

        send(answer(asked), "/days/2026-11-25", ada, 302);
        assertThat(page("/", ada).select(".ask")).isEmpty();

        SheetForm note = form("/", ada).type(seat.task("Finish sand"), "note", "both sides");
        send(note, "/days/2026-11-25", ada, 302);
        assertThat(page("/", ada).select(".ask")).isEmpty();
    }

    @Test
    void letsAnAnswerStandOnlyForItsFigures() throws Exception {
        SheetForm form = new SheetForm();
        form.row("task:" + seat.task("Finish sand"), "direct", "10");
        send(form, "/days/2026-11-25", ada, 302);
        Document asked = page("/", ada);
        assertThat(asked.select(".ask").text()).contains("10 h on one thing");
        send(answer(asked), "/days/2026-11-25", ada, 302);
        send(form("/", ada).type(seat.task("Finish sand"), "time", "11"), "/days/2026-11-25", ada, 302);
        assertThat(page("/", ada).select(".ask").text()).contains("11 h on one thing");
    }

    @Test
    void offersTheUsualTripForWorkAtTheSite() throws Exception {
        SheetForm form = new SheetForm();
        form.row("task:" + seat.task("Scribe to the wall"), "direct", "3");
        send(form, "/days/2026-11-25", ada, 302);
        Document asked = page("/", ada);
        assertThat(asked.select(".ask").text()).contains("no travel that day");
        String offer = asked.selectFirst(".ask button[name=act]").val();

        send(SheetForm.of(asked.outerHtml()).set("act", offer), "/days/2026-11-25", ada, 302);

        assertThat(days.minutes(ada, TODAY)).isEqualTo(180 + 70);
        assertThat(page("/", ada).select(".ask")).isEmpty();
    }

    @Test
    void takesTheSecondOfTwoEqualEntriesOffWithOneTap() throws Exception {
        SheetForm form = new SheetForm();
        form.row("task:" + seat.task("Finish sand"), "direct", "2");
        form.row("task:" + seat.task("Finish sand"), "direct", "2");
        send(form, "/days/2026-11-25", ada, 302);
        Document asked = page("/", ada);
        assertThat(asked.select(".ask")).hasSize(1);
        String offer = asked.selectFirst(".ask button[name=act]").val();
        send(SheetForm.of(asked.outerHtml()).set("act", offer), "/days/2026-11-25", ada, 302);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(120);
    }

    @Test
    void asksAboutATenthOfAnHourUnlessItWasTypedAsMinutes() throws Exception {
        SheetForm form = new SheetForm();
        form.row("task:" + seat.task("Finish sand"), "direct", "0.1");
        form.row("task:" + stair.task("Cut treads"), "direct", "12m");
        send(form, "/days/2026-11-25", ada, 302);
        assertThat(page("/", ada).select(".ask p").eachText())
                .containsExactly("0.1 is 6 min, not a quarter hour. Is it right?");
    }

    @Test
    void asksAboutTasksAndHoursThatDoNotFit() throws Exception {
        days.done(seat.task("Finish sand"), TODAY, ada);
        days.done(stair.task("Cut treads"), TODAY.minusDays(1), ada);
        days.logged(ada, TODAY, stair, "Cut treads", 60);
        Document asked = page("/", ada);
        assertThat(asked.select(".ask p").eachText())
                .anyMatch(t -> t.startsWith("Finish sand, " + seat.number() + " is done, but nobody logged an hour"))
                .anyMatch(t -> t.startsWith("Cut treads, " + stair.number() + " was done on Tue 24 Nov already"));
        Document more = sent(
                SheetForm.of(asked.outerHtml()).set("act", "log:" + seat.task("Finish sand")),
                "/days/2026-11-25",
                ada,
                200);
        send(SheetForm.of(more.outerHtml()).type(seat.task("Finish sand"), "time", "1"), "/days/2026-11-25", ada, 302);
        Document left = page("/", ada);
        assertThat(left.select(".ask")).hasSize(1);
        send(answer(left), "/days/2026-11-25", ada, 302);
        assertThat(page("/", ada).select(".ask")).isEmpty();
        assertThat(page("/", jonas).select(".ask")).isEmpty();
    }

    @Test
    void offersOneTapWhereClockTimesMeetOrTheJobIsClosed() throws Exception {
        SampleJob closed = days.job("Wainscot", "closed", LocalDate.of(2026, 1, 5), "Touch up");
        SheetForm form = new SheetForm();
        form.row("task:" + seat.task("Finish sand"), "direct", "8-12");
        form.row("task:" + stair.task("Cut treads"), "direct", "11-14");
        form.row("task:" + closed.task("Touch up"), "direct", "1h30");
        Document refused = sent(form, "/days/2026-11-25", ada, 422);
        assertThat(refused.select(".row .ask-answers button").eachText())
                .contains("Keep 3 h without the clock", "Make it a call-back");
        String keep = refused.select(".row .ask-answers button:contains(3 h)").val();
        Document once = sent(SheetForm.of(refused.outerHtml()).set("act", keep), "/days/2026-11-25", ada, 422);
        String back =
                once.select(".row .ask-answers button:contains(call-back)").val();
        send(SheetForm.of(once.outerHtml()).set("act", back), "/days/2026-11-25", ada, 302);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(240 + 180 + 90);
    }

    @Test
    void readsADayInOneLineAndShowsItBeforeSaving() throws Exception {
        Document read = sent(
                form("/", ada).set("line", "glue-up 2h30, sanding 45m, rework 20m treads"),
                "/days/2026-11-25",
                ada,
                422);
        assertThat(days.minutes(ada, TODAY)).isZero();
        assertThat(read.text()).contains("From your line: sanding 45m");
        assertThat(read.select("input[value='treads']")).hasSize(1);

        send(SheetForm.of(read.outerHtml()), "/days/2026-11-25", ada, 302);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(150 + 45 + 20);
    }

    @Test
    void asksWhichWhenWordsFitMoreThanOneTask() throws Exception {
        days.job("Pantry", "Finish sand");
        Document read = sent(form("/", ada).set("line", "sanding 1h").set("act", "read"), "/days/2026-11-25", ada, 200);
        assertThat(read.text()).contains("\"sanding 1h\" fits more than one. Which?");
        assertThat(read.select("optgroup[label=Perhaps] option")).hasSize(2);
    }

    @Test
    void keepsWhatOfALineWasNotUnderstood() throws Exception {
        Document read = sent(
                form("/", ada).set("line", "sanding, glue-up 2h").set("act", "read"), "/days/2026-11-25", ada, 200);
        assertThat(read.selectFirst("#line").val()).isEqualTo("sanding");
        assertThat(read.selectFirst("#line-error").text()).contains("How long");
        assertThat(read.select("input[data-hours]").eachAttr("value")).contains("2 h");
    }

    @Test
    void addsARowAndKeepsWhatWasTyped() throws Exception {
        SheetForm form =
                form("/", ada).type(seat.task("Finish sand"), "time", "1h").set("act", "add");
        Document more = sent(form, "/days/2026-11-25", ada, 200);
        assertThat(more.select("select[name$=.what]")).hasSize(2);
        assertThat(more.select("input[data-hours]").eachAttr("value")).contains("1h");
    }

    @Test
    void hoursOnAPlannedTaskBeginIt() throws Exception {
        days.plan(seat.task("Finish sand"), TODAY, ada);
        send(form("/", ada).type(seat.task("Finish sand"), "time", "1"), "/days/2026-11-25", ada, 302);
        assertThat(days.state(seat.task("Finish sand"))).isEqualTo("started");
    }

    @Test
    void logsReworkBesideTheWorkWithAReason() throws Exception {
        SheetForm form = new SheetForm();
        form.row("task:" + seat.task("Finish sand"), "direct", "2");
        form.row("task:" + seat.task("Finish sand"), "rework", "20m");
        Document refused = sent(form, "/days/2026-11-25", ada, 422);
        assertThat(refused.text()).contains("why it had to be done again");
        send(SheetForm.of(refused.outerHtml()).set("row.1.reason", "door rail"), "/days/2026-11-25", ada, 302);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(140);
    }

    @Test
    void takesOnlyCallBacksOnAClosedJob() throws Exception {
        SampleJob closed = days.job("Wainscot", "closed", LocalDate.of(2026, 1, 5), "Touch up");
        SheetForm form = new SheetForm();
        form.row("task:" + closed.task("Touch up"), "direct", "1.5");
        assertThat(sent(form, "/days/2026-11-25", ada, 422).text()).contains("is closed. Make it a call-back");
        send(form.set("row.0.class", "call-back"), "/days/2026-11-25", ada, 302);
        assertThat(jdbc.sql("select why from calibration").query(String.class).list())
                .as("what it took changed, so the past is measured again")
                .anyMatch(why -> why.endsWith("changed after it was closed"));
    }

    @Test
    void refusesTomorrowUnknownTasksAndMoreThanADay() throws Exception {
        SheetForm form = new SheetForm();
        form.row("task:" + seat.task("Finish sand"), "direct", "1");
        assertThat(sent(form, "/days/2026-11-26", ada, 422).text()).contains("has not come yet");

        SheetForm unknown = new SheetForm();
        unknown.row("task:" + Ids.next(), "direct", "1");
        assertThat(sent(unknown, "/days/2026-11-25", ada, 422).text()).contains("not here any more");

        SheetForm much = new SheetForm();
        much.row("task:" + seat.task("Finish sand"), "direct", "13");
        much.row("task:" + stair.task("Cut treads"), "direct", "12");
        assertThat(sent(much, "/days/2026-11-25", ada, 422).text()).contains("A day has 24 hours");
        assertThat(days.minutes(ada, TODAY)).isZero();
    }

    @Test
    void splitsABoxWithTwoClockRangesAndRepeatsWithoutDoubling() throws Exception {
        SheetForm form = new SheetForm();
        form.row("task:" + seat.task("Finish sand"), "direct", "8-12 + 12:30-4");
        send(form, "/days/2026-11-25", ada, 302);
        send(form, "/days/2026-11-25", ada, 302);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(450);
        assertThat(page("/", ada)
                        .select(".row[data-state=saved] input[data-hours]")
                        .eachAttr("value"))
                .containsExactly("08:00-12:00", "12:30-16:00");
    }

    @Test
    void swapsTheTimesOfTwoEntriesInOneSave() throws Exception {
        SheetForm form = new SheetForm();
        form.row("task:" + seat.task("Finish sand"), "direct", "8-10");
        form.row("task:" + stair.task("Cut treads"), "direct", "10-12");
        send(form, "/days/2026-11-25", ada, 302);
        SheetForm swapped = form("/", ada)
                .type(seat.task("Finish sand"), "time", "10-12")
                .type(stair.task("Cut treads"), "time", "8-10");
        send(swapped, "/days/2026-11-25", ada, 302);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(240);
    }

    @Test
    void takesASaveBack() throws Exception {
        UUID kept = days.logged(ada, TODAY, stair, "Cut treads", 60);
        SheetForm form = form("/", ada)
                .type(seat.task("Finish sand"), "time", "2")
                .type(stair.task("Cut treads"), "time", "90m");
        MvcResult saved = send(form, "/days/2026-11-25", ada, 302).andReturn();
        @SuppressWarnings("unchecked")
        List<String> changes = (List<String>) saved.getFlashMap().get("undo");
        assertThat(changes).hasSize(2);
        for (int twice = 0; twice < 2; twice++) {
            mvc.perform(post("/days/2026-11-25/undo")
                            .param("change", changes.toArray(String[]::new))
                            .with(csrf())
                            .with(signedIn(ada)))
                    .andExpect(status().is(302));
        }
        assertThat(days.minutes(ada, TODAY)).isEqualTo(60);
        assertThat(days.trailOf(kept)).containsExactly("insert", "update", "update");
    }

    @Test
    void showsBothVersionsWhereWhatIsTakenBackWasChangedMeanwhile() throws Exception {
        SheetForm form = form("/", ada).type(seat.task("Finish sand"), "time", "2");
        MvcResult saved = send(form, "/days/2026-11-25", ada, 302).andReturn();
        @SuppressWarnings("unchecked")
        List<String> changes = (List<String>) saved.getFlashMap().get("undo");
        send(form("/", ada).type(seat.task("Finish sand"), "time", "3"), "/days/2026-11-25", ada, 302);
        MvcResult met = mvc.perform(post("/days/2026-11-25/undo")
                        .param("change", changes.toArray(String[]::new))
                        .with(csrf())
                        .with(signedIn(ada)))
                .andExpect(status().isConflict())
                .andReturn();
        Document page = Jsoup.parse(met.getResponse().getContentAsString());
        assertThat(page.select("table tbody tr").eachText())
                .anySatisfy(row -> assertThat(row).contains("3 h"));
        assertThat(days.minutes(ada, TODAY)).isEqualTo(180);
    }

    @Test
    void keepsALineThatIsTooLongAndSaysSoBesideIt() throws Exception {
        String line = "sanding 1h, ".repeat(200);
        Document page = sent(form("/", ada).set("line", line).set("act", "read"), "/days/2026-11-25", ada, 422);
        assertThat(page.select("#line").val()).isEqualTo(line);
        assertThat(page.select("#line-error").text()).contains("too much for one line");
        assertThat(page.select("#line").attr("aria-describedby")).isEqualTo("line-error");
    }

    @Test
    void aHelperSeesAndLogsOnlyHisOwn() throws Exception {
        days.logged(ada, TODAY, seat, "Finish sand", 131);
        Document own = page("/", jonas);
        assertThat(own.text()).doesNotContain("2 h 11").doesNotContain("Ada Fenn");
        String hers = "/days/2026-11-25?person=" + ada.personId();
        mvc.perform(get(hers).with(signedIn(jonas))).andExpect(status().isNotFound());
        SheetForm form = new SheetForm();
        form.row("task:" + seat.task("Finish sand"), "direct", "1");
        send(form, hers, jonas, 404);
        UUID id = days.logged(ada, TODAY, seat, "Glue up seat top", 60);
        SheetForm foreign = new SheetForm().row(id, "0", "task:" + seat.task("Glue up seat top"), "direct", "3");
        Document refused = sent(foreign, "/days/2026-11-25", jonas, 422);
        assertThat(refused.text()).contains("another day");
        assertThat(days.minutes(ada, TODAY)).isEqualTo(191);
    }

    @Test
    void theOwnerLogsForTheHelper() throws Exception {
        String his = "/days/2026-11-25?person=" + jonas.personId();
        SheetForm form = form(his, ada).type(seat.task("Finish sand"), "time", "2");
        send(form, his, ada, 302);
        assertThat(days.minutes(jonas, TODAY)).isEqualTo(120);
    }

    @Test
    void sendsTheBookkeeperToTheBooks() throws Exception {
        mvc.perform(get("/").with(signedIn(people.bookkeeper()))).andExpect(redirectedUrl("/books"));
        mvc.perform(get("/days/2026-11-24").with(signedIn(people.bookkeeper()))).andExpect(status().isForbidden());
    }

    @Test
    void marksADayOff() throws Exception {
        mvc.perform(post("/days/2026-11-24/mark")
                        .param("kind", "sick")
                        .with(csrf())
                        .with(signedIn(jonas)))
                .andExpect(redirectedUrl("/days/2026-11-24"));
        assertThat(page("/days/2026-11-24", jonas).text()).contains("Marked: Sick");
        mvc.perform(post("/days/2026-11-24/mark").param("kind", "").with(csrf()).with(signedIn(jonas)));
        assertThat(page("/days/2026-11-24", jonas).text()).doesNotContain("Marked:");
    }

    @Test
    void keepsTheNoteOfAMarkAndShowsBothVersionsWhereTwoMet() throws Exception {
        String day = "/days/2026-11-24";
        mark(jonas, "off", "dentist", "", 302);
        assertThat(page(day, jonas).selectFirst("#mark-note").val()).isEqualTo("dentist");
        assertThat(page("/hours?week=2026-11-24", ada).select("td.mark").text()).isEqualTo("off dentist");
        assertThat(page("/hours?week=2026-11-24", people.bookkeeper()).text()).doesNotContain("dentist");

        Document met = mark(jonas, "sick", "a cold", "", 409);
        assertThat(met.select("table tbody tr").eachText()).contains("Mark Off Sick", "Note dentist a cold");
        assertThat(met.selectFirst("#mark-note").val()).isEqualTo("a cold");

        mark(jonas, "off", "dentist, then the bank", "0", 302);
        assertThat(mark(jonas, "", "", "0", 409).text()).contains("Off no mark");
        Document refused = mark(jonas, "off", "x".repeat(201), "1", 422);
        assertThat(refused.selectFirst("#mark-note").val()).hasSize(201);
        assertThat(refused.selectFirst("#mark-note-error").text()).contains("too long");
        mark(jonas, "", "", "1", 302);
        assertThat(mark(jonas, "off", "bank", "1", 409).text()).contains("no mark Off");
    }

    private Document mark(SignedIn me, String kind, String note, String version, int code) throws Exception {
        return Jsoup.parse(body(mvc.perform(post("/days/2026-11-24/mark")
                        .param("kind", kind)
                        .param("note", note)
                        .param("version", version)
                        .with(csrf())
                        .with(signedIn(me)))
                .andExpect(status().is(code))
                .andReturn()));
    }

    @Test
    void answersStrangeInputWithoutAFailure() throws Exception {
        for (String strange :
                List.of("\u0000", "💪".repeat(50), "-5", "9".repeat(3000), "NaN", "1e9", "'; drop", "٣", " ")) {
            for (String field : List.of("time", "note", "reason", "what", "class", "id", "version")) {
                SheetForm form = new SheetForm();
                form.row("task:" + seat.task("Finish sand"), "direct", "1");
                int code = mvc.perform(form.set("row.0." + field, strange)
                                .sentTo("/days/2026-11-25")
                                .with(signedIn(ada)))
                        .andReturn()
                        .getResponse()
                        .getStatus();
                assertThat(code).as(field + " = " + strange).isIn(302, 422);
            }
        }
        for (String address : List.of("/days/x", "/days/0000-01-01", "/days/2026-02-30", "/days/+99999-01-01")) {
            mvc.perform(get(address).with(signedIn(ada))).andExpect(status().isNotFound());
        }
    }

    /** One tap on the first question. */
    private static SheetForm answer(Document asked) {
        return SheetForm.of(asked.outerHtml())
                .yes(asked.selectFirst("button[name=yes]").val());
    }

    private Document page(String address, SignedIn me) throws Exception {
        return Jsoup.parse(mvc.perform(get(address).with(signedIn(me)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private SheetForm form(String address, SignedIn me) throws Exception {
        return SheetForm.of(page(address, me).outerHtml());
    }

    private org.springframework.test.web.servlet.ResultActions send(
            SheetForm form, String address, SignedIn me, int code) throws Exception {
        var sent = mvc.perform(form.sentTo(address).with(signedIn(me)));
        assertThat(sent.andReturn().getResponse().getStatus())
                .as(() -> Jsoup.parse(body(sent.andReturn())).select("main").text())
                .isEqualTo(code);
        return sent;
    }

    private Document sent(SheetForm form, String address, SignedIn me, int code) throws Exception {
        return Jsoup.parse(body(send(form, address, me, code).andReturn()));
    }

    private static String body(MvcResult result) {
        try {
            return result.getResponse().getContentAsString();
        } catch (java.io.UnsupportedEncodingException e) {
            throw new AssertionError(e);
        }
    }
}
