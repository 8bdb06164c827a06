package org.tallywright.daylog.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.daylog.SampleDays.TODAY;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.daylog.SampleDays;
import org.tallywright.daylog.SampleDays.SampleJob;
import org.tallywright.daylog.StatementCount;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

@AppTest
class ClockWebTest {
    private static final String SHEET = "/days/2026-11-25";

    @Autowired
    MockMvc mvc;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleDays days;

    @Autowired
    TestClock clock;

    SignedIn ada;
    SignedIn jonas;
    SampleJob seat;

    @BeforeEach
    void aJobIsRunning() {
        ada = people.owner();
        jonas = people.helper();
        seat = days.job("Window seat, north bay", "Glue up seat top", "Finish sand");
    }

    @Test
    void startsPausesAndPutsInWhatItCameTo() throws Exception {
        for (SignedIn me : new SignedIn[] {ada, people.lead(), jonas}) {
            start(me, "Finish sand");
            clock.advance(Duration.ofMinutes(72));
            Document running = page(me);
            assertThat(running.selectFirst(".clock-line").text())
                    .contains("Finish sand")
                    .contains("1 h 12");
            assertThat(running.select(".clock-on")).hasSize(1);
            press(me, running, button(running, "Pause"), 302);

            Document offered = page(me);
            assertThat(row(offered, "Finish sand").text())
                    .contains("Clock: 1 h 12")
                    .contains("Go on");
            assertThat(days.minutes(me, TODAY)).as("nothing by itself").isZero();
            press(me, offered, button(offered, "Put it in"), 302);

            assertThat(days.minutes(me, TODAY)).isEqualTo(72);
            assertThat(page(me).select(".clock-offer")).isEmpty();
        }
    }

    @Test
    void theBookkeeperHasNone() throws Exception {
        SheetForm form = new SheetForm().set("act", "clock-start:" + Ids.next());
        mvc.perform(form.sentTo(SHEET).with(signedIn(people.bookkeeper()))).andExpect(status().isForbidden());
    }

    @Test
    void whatIsTypedOnTheSheetStays() throws Exception {
        Document open = page(ada);
        SheetForm form = form(open).type(seat.task("Glue up seat top"), "time", "2h30");
        Document page = sent(ada, form.set("act", start(open, "Finish sand")), 200);
        assertThat(page.select("input[data-hours]").eachAttr("value")).contains("2h30");
        assertThat(page.text()).contains("The clock runs: Finish sand");
        assertThat(days.minutes(ada, TODAY)).isZero();
    }

    @Test
    void aDoubleTapStartsOnceAndPutsInOnce() throws Exception {
        Document page = page(ada);
        SheetForm form = form(page).set("act", start(page, "Finish sand"));
        sent(ada, form, 302);
        sent(ada, form, 302);
        assertThat(runs()).isEqualTo(1);
        clock.advance(Duration.ofMinutes(30));
        press(ada, "Pause");
        Document offered = page(ada);
        SheetForm take = form(offered).set("act", button(offered, "Put it in"));
        sent(ada, take, 302);
        sent(ada, take, 302);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(30);
    }

    @Test
    void switchingStopsTheOneAndStartsTheOther() throws Exception {
        start(ada, "Finish sand");
        clock.advance(Duration.ofMinutes(45));
        Document page = page(ada);
        assertThat(row(page, "Glue up seat top").text()).contains("Switch here");
        press(ada, page, start(page, "Glue up seat top"), 302);
        Document after = page(ada);
        assertThat(after.selectFirst(".clock-line").text()).contains("Glue up seat top");
        assertThat(row(after, "Finish sand").text()).contains("Clock: 45 min");
    }

    @Test
    void aSecondDeviceIsToldWhatRunsAndNothingIsStarted() throws Exception {
        Document phone = page(ada);
        Document laptop = page(ada);
        press(ada, phone, start(phone, "Finish sand"), 302);
        Document told = sent(ada, form(laptop).set("act", start(laptop, "Glue up seat top")), 409);
        assertThat(told.select(".clock .error").text()).contains("Finish sand").contains("started meanwhile");
        assertThat(runs()).isEqualTo(1);
        press(ada, told, start(told, "Glue up seat top"), 302);
        assertThat(page(ada).selectFirst(".clock-line").text()).contains("Glue up seat top");
    }

    @Test
    void severalPausesAreOneOffer() throws Exception {
        for (int n = 0; n < 2; n++) {
            start(ada, "Finish sand");
            clock.advance(Duration.ofMinutes(40));
            press(ada, "Pause");
        }
        assertThat(page(ada).select(".clock-offer").eachText())
                .singleElement()
                .asString()
                .contains("1 h 20");
    }

    @Test
    void whatItCameToMeanwhileIsSaidBeforeItIsPutIn() throws Exception {
        ran("Finish sand", 30);
        Document old = page(ada);
        ran("Finish sand", 15);
        Document told = sent(ada, form(old).set("act", button(old, "Put it in")), 422);
        assertThat(told.text()).contains("has come to 45 min meanwhile");
        assertThat(days.minutes(ada, TODAY)).isZero();
        press(ada, told, button(told, "Put it in"), 302);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(45);
    }

    @Test
    void anOfferBesideSavedHoursIsOneMoreEntry() throws Exception {
        days.logged(ada, TODAY, seat, "Finish sand", 60);
        SheetForm form = form(page(ada));
        assertThat(form.field("clock.id")).isNotEmpty();
        start(ada, "Finish sand");
        clock.advance(Duration.ofMinutes(30));
        press(ada, "Pause");
        press(ada, "Put it in");
        assertThat(days.minutes(ada, TODAY)).isEqualTo(90);
    }

    /** What stands in the row by hand is not the clock's: both are logged. */
    @Test
    void anOfferBesideTypedHoursIsAnEntryOfItsOwn() throws Exception {
        ran("Finish sand", 45);
        Document page = page(ada);
        String put = button(page, "Put it in");
        String row =
                page.select("input[name$=.id][value=" + put.split(":")[1] + "]").attr("name");
        SheetForm typed = form(page).set(row.replace(".id", ".time"), "3h").set("act", put);
        sent(ada, typed, 302);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(180 + 45);
        assertThat(page(ada).select(".clock-offer")).isEmpty();
    }

    /** A line that is still in its box is seen in rows before anything is saved. */
    @Test
    void anOfferDoesNotThrowAwayTheLine() throws Exception {
        ran("Finish sand", 30);
        Document page = page(ada);
        Document heard =
                sent(ada, form(page).set("line", "rip hardwood 20m").set("act", button(page, "Put it in")), 422);
        assertThat(heard.select("input[data-hours]").eachAttr("value")).contains("30 min", "20 min");
        assertThat(days.minutes(ada, TODAY)).isZero();
    }

    @Test
    void undoOffersItAgain() throws Exception {
        ran("Finish sand", 30);
        MvcResult saved = result(ada, pressed(page(ada), "Put it in"), 302);
        assertThat(saved.getFlashMap().get("undo")).isNotNull();
        String change =
                ((java.util.List<?>) saved.getFlashMap().get("undo")).get(0).toString();
        SheetForm undo = new SheetForm().set("change", change);
        mvc.perform(undo.sentTo(SHEET + "/undo").with(signedIn(ada))).andExpect(status().is(302));
        assertThat(days.minutes(ada, TODAY)).isZero();
        assertThat(page(ada).select(".clock-offer").text()).contains("30 min");
    }

    @Test
    void aForgottenClockAsksWhenItWasAndOffersWhatIsTyped() throws Exception {
        clock.set(Instant.parse("2026-11-24T12:40:00Z")); // 07:40 the day before
        begin(ada, "/days/2026-11-24");
        clock.set(TestClock.START);

        Document page = page(ada);
        assertThat(page.select(".clock .ask").text())
                .contains("The clock for Finish sand")
                .contains("has run since 07:40 yesterday. When did you stop?")
                .doesNotContain("Still at it");
        assertThat(page.select(".clock-offer")).isEmpty();
        String ask = button(page, "That is when");
        String box = "ended." + ask.substring(ask.indexOf(':') + 1);
        Document refused = sent(ada, form(page).set(box, "4").set("act", ask), 422);
        assertThat(refused.select(".clock .error").text()).contains("may be a time or a length");
        assertThat(refused.select("input[name='" + box + "']").val()).isEqualTo("4");
        sent(ada, form(page).set(box, "24h").set("act", ask), 422);
        sent(ada, form(page).set(box, "4:10pm").set("act", ask), 302);

        assertThat(page(ada).select(".clock").text()).contains("Tue 24 Nov: 8 h 30 is not put in yet");
        Document that = Jsoup.parse(mvc.perform(get("/days/2026-11-24").with(signedIn(ada)))
                .andReturn()
                .getResponse()
                .getContentAsString());
        assertThat(that.select(".clock-offer").text()).contains("8 h 30");
        press(ada, "/days/2026-11-24", that, button(that, "Put it in"), 302);
        assertThat(days.minutes(ada, TODAY.minusDays(1))).isEqualTo(510);
        assertThat(page(ada).select(".clock").text()).doesNotContain("not put in");
    }

    @Test
    void theKeyInTheBoxAnswersToo() throws Exception {
        start(ada, "Finish sand");
        clock.advance(Duration.ofHours(6));
        Document page = page(ada);
        assertThat(page.select(".clock .ask").text()).contains("Still at it");
        String ask = button(page, "That is when");
        sent(
                ada,
                form(page)
                        .set("ended." + ask.substring(ask.indexOf(':') + 1), "2h")
                        .set("act", "save"),
                302);
        assertThat(page(ada).select(".clock-offer").text()).contains("2 h");
    }

    @Test
    void aSwitchFromAForgottenClockAsksAboutIt() throws Exception {
        start(ada, "Finish sand");
        clock.advance(Duration.ofHours(6));
        start(ada, "Glue up seat top");
        Document page = page(ada);
        assertThat(page.selectFirst(".clock-line").text()).contains("Glue up seat top");
        assertThat(page.select(".clock .ask").text()).contains("longer than it is believed");
        press(ada, page, button(page, "Throw it away"), 302);
        assertThat(page(ada).select(".clock .ask")).isEmpty();
    }

    @Test
    void longDaysOfTheClockChangeCountTheHoursThatWere() throws Exception {
        clock.set(Instant.parse("2026-11-01T05:30:00Z")); // 01:30, before the clocks are put back at 02:00
        begin(ada, "/days/2026-11-01");
        clock.set(Instant.parse("2026-11-01T08:00:00Z")); // 03:00 after it
        press(ada, "Pause");
        assertThat(page(ada).select(".clock-offer").text()).contains("2 h 30");
    }

    @Test
    void nobodySeesOrTouchesAnothersClock() throws Exception {
        start(jonas, "Finish sand");
        UUID run = jdbc.sql("select id from clock_run").query(UUID.class).single();
        Document his = Jsoup.parse(
                mvc.perform(get(SHEET + "?person=" + jonas.personId()).with(signedIn(ada)))
                        .andReturn()
                        .getResponse()
                        .getContentAsString());
        assertThat(his.select(".clock, .clock-start, .clock-line")).isEmpty();
        for (String act : new String[] {"clock-stop:", "clock-on:", "clock-drop:", "clock-keep:"}) {
            sent(ada, form(page(ada)).set("act", act + run), 404);
        }
        sent(ada, form(page(ada)).set("act", "clock-take:" + Ids.next() + ":" + run + ":5"), 404);
        mvc.perform(form(page(ada))
                        .set("act", "clock-stop:" + run)
                        .sentTo(SHEET + "?person=" + jonas.personId())
                        .with(signedIn(ada)))
                .andExpect(status().isNotFound());
        assertThat(page(jonas).select(".clock-line")).hasSize(1);
    }

    @Test
    void isRefusedInWordsWhereHoursWouldBe() throws Exception {
        SampleJob closed = days.job("Closed", "closed", TODAY.minusDays(90), "Call-back door");
        SheetForm form = form(page(ada));
        form.row("task:" + closed.task("Call-back door"), "direct", "");
        assertThat(sent(ada, form.set("act", "clock-start:" + form.last()), 422)
                        .select(".clock .error")
                        .text())
                .contains("is closed");
        SheetForm call = form(page(ada));
        call.row("task:" + closed.task("Call-back door"), "call-back", "");
        sent(ada, call.set("act", "clock-start:" + call.last()), 302);
        SheetForm none = form(page(ada));
        none.row("", "direct", "");
        assertThat(sent(ada, none.set("act", "clock-start:" + none.last()), 422)
                        .select(".clock .error")
                        .text())
                .contains("Choose what");
        sent(ada, form(page(ada)).set("act", "clock-dance:1"), 422);
        sent(ada, form(page(ada)).set("act", "clock-stop:1"), 422);
    }

    @Test
    void inAWeekThatStandsStillNothingStartsAndNothingIsPutIn() throws Exception {
        ran("Finish sand", 30);
        Document before = page(ada);
        LocalDate monday = TODAY.minusDays(2);
        people.asShop(() ->
                jdbc.sql("""
                        insert into work_week (person_id, monday, state, approved_by, approved_at, minutes, version)
                        values (?, ?, 'approved', ?, '2026-11-25T18:00:00Z', 0, 0)""").params(ada.personId(), monday, ada.personId()).update());
        assertThat(sent(ada, form(before).set("act", start(before, "Glue up seat top")), 422)
                        .select(".clock .error")
                        .text())
                .contains("This week is approved");
        sent(ada, form(before).set("act", button(before, "Put it in")), 422);
        assertThat(days.minutes(ada, TODAY)).isZero();
        Document after = page(ada);
        assertThat(after.select(".clock-start")).isEmpty();
        assertThat(after.select(".clock-offer").text()).contains("30 min").doesNotContain("Put it in");
    }

    @Test
    void aQuestionThatHoldsTheSaveKeepsWhatWasPutIn() throws Exception {
        ran("Finish sand", 60);
        Document page = page(ada);
        days.logged(ada, TODAY, seat, "Finish sand", 60);
        Document asked = sent(ada, form(page).set("act", button(page, "Put it in")), 422);
        Element yes = asked.select("button[name=yes]").first();
        assertThat(asked.select("input[name=take]")).hasSize(1);
        sent(ada, form(asked).yes(yes.val()), 302);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(120);
        assertThat(page(ada).select(".clock-offer")).isEmpty();
    }

    @Test
    void whatIsThrownAwayCanBeKeptAfterAll() throws Exception {
        ran("Finish sand", 30);
        MvcResult gone = result(ada, pressed(page(ada), "Throw it away"), 302);
        assertThat(page(ada).select(".clock-offer")).isEmpty();
        press(ada, page(ada), "clock-keep:" + gone.getFlashMap().get("clockBack"), 302);
        assertThat(page(ada).select(".clock-offer").text()).contains("30 min");
    }

    @Test
    void theSheetAsksOneQueryMore() throws Exception {
        int own = StatementCount.during(() -> page(ada)).stream()
                .filter(sql -> sql.contains("clock_run"))
                .toList()
                .size();
        for (int n = 0; n < 12; n++) {
            ran(n % 2 == 0 ? "Finish sand" : "Glue up seat top", 5);
        }
        int many = StatementCount.during(() -> page(ada)).stream()
                .filter(sql -> sql.contains("clock_run"))
                .toList()
                .size();
        assertThat(own).isEqualTo(1);
        assertThat(many).isEqualTo(1);
    }

    private void ran(String task, int minutes) throws Exception {
        start(ada, task);
        clock.advance(Duration.ofMinutes(minutes));
        press(ada, "Pause");
    }

    private void start(SignedIn me, String task) throws Exception {
        Document page = page(me);
        press(me, page, start(page, task), 302);
    }

    /** On a row picked by hand. */
    private void begin(SignedIn me, String sheet) throws Exception {
        SheetForm form = form(page(me));
        form.row("task:" + seat.task("Finish sand"), "direct", "");
        mvc.perform(form.set("act", "clock-start:" + form.last()).sentTo(sheet).with(signedIn(me)))
                .andExpect(status().is(302));
    }

    private void press(SignedIn me, String words) throws Exception {
        result(me, pressed(page(me), words), 302);
    }

    private static SheetForm pressed(Document page, String words) {
        return form(page).set("act", button(page, words));
    }

    private int runs() {
        return jdbc.sql("select count(*) from clock_run").query(Integer.class).single();
    }

    private Document page(SignedIn me) throws Exception {
        return Jsoup.parse(mvc.perform(get("/").with(signedIn(me)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private static SheetForm form(Document page) {
        return SheetForm.of(page.outerHtml());
    }

    private static Element row(Document page, String title) {
        return page.select(".day .row").stream()
                .filter(row -> row.select("> label").text().startsWith(title))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no row " + title));
    }

    private static String start(Document page, String title) {
        return row(page, title).select("button[value^=clock-start]").val();
    }

    private static String button(Document page, String words) {
        return page.select("form.day button").stream()
                .filter(button -> button.text().equals(words) && button.val().startsWith("clock-"))
                .findFirst()
                .orElseThrow(() -> new AssertionError(
                        "no button " + words + " in " + page.select("form.day").text()))
                .val();
    }

    private void press(SignedIn me, Document page, String act, int status) throws Exception {
        press(me, SHEET, page, act, status);
    }

    private void press(SignedIn me, String sheet, Document page, String act, int status) throws Exception {
        mvc.perform(form(page).set("act", act).sentTo(sheet).with(signedIn(me))).andExpect(status().is(status));
    }

    private Document sent(SignedIn me, SheetForm form, int status) throws Exception {
        return Jsoup.parse(result(me, form, status).getResponse().getContentAsString());
    }

    private MvcResult result(SignedIn me, SheetForm form, int status) throws Exception {
        return mvc.perform(form.sentTo(SHEET).with(signedIn(me)))
                .andExpect(status().is(status))
                .andReturn();
    }
}
