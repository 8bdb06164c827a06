package org.tallywright.daylog.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.daylog.SampleDays.TODAY;
import static org.tallywright.people.SamplePeople.signedIn;

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
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockMvcRequestBuilders;
import org.tallywright.AppTest;
import org.tallywright.daylog.SampleDays;
import org.tallywright.daylog.SampleDays.SampleJob;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

/** A week is handed in, approved, locked; what is locked changes by a dated correction that every sum holds. */
@AppTest
class WeekSheetWebTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 11, 16);

    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleDays days;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;
    SignedIn brannoc;
    SignedIn jonas;
    SampleJob seat;
    UUID tuesday;

    @BeforeEach
    void aWeekOf46Hours() {
        ada = people.owner();
        brannoc = people.lead();
        jonas = people.helper();
        people.paid(jonas, LocalDate.of(2026, 1, 1), "12", "27");
        seat = days.job("Window seat", "Finish sand", "Glue up");
        SampleJob stair = days.job("Stair treads", "Cut treads");
        days.logged(jonas, MONDAY, seat, "Finish sand", 11 * 60);
        tuesday = days.logged(jonas, MONDAY.plusDays(1), seat, "Glue up", 11 * 60);
        days.logged(jonas, MONDAY.plusDays(2), stair, "Cut treads", 12 * 60);
        days.logged(jonas, MONDAY.plusDays(3), stair, "Cut treads", 12 * 60);
    }

    /** 46 h at 12.00 are 588.00: the worked example of 29 CFR 778.110(a). */
    @Test
    void showsHoursByDayAndJobGapsAndOvertime() throws Exception {
        Document page = page(jonas, ada);
        assertThat(page.select("tbody tr").eachText())
                .anyMatch(t -> t.startsWith("Window seat") && t.contains("22 h"))
                .anyMatch(t -> t.startsWith("Stair treads") && t.contains("24 h"));
        assertThat(page.select("tfoot").text()).contains("46 h");
        assertThat(page.text())
                .contains("6 h over 40 h a week")
                .contains("$588.00")
                .contains("local law decides");
        assertThat(page.select("li.row").text()).contains("Fri 20 Nov").doesNotContain("Thu");
    }

    @Test
    void showsWagesToTheOwnerAndTheBookkeeperOnly() throws Exception {
        assertThat(page(jonas, people.bookkeeper()).text()).contains("$588.00");
        for (SignedIn other : new SignedIn[] {brannoc, jonas}) {
            assertThat(page(jonas, other).text()).doesNotContain("$").contains("6 h over 40 h");
        }
        assertThat(page(jonas, people.bookkeeper()).select("main form, main a[href^=/days]"))
                .isEmpty();
    }

    @Test
    void theShopsOwnRuleCounts() throws Exception {
        people.asShop(() -> jdbc.sql("update shop set overtime_day_minutes = 480, overtime_premium_percent = 100")
                .update());
        assertThat(page(jonas, ada).text())
                .contains("14 h over 8 h a day or 40 h a week")
                .contains("$720.00");
    }

    @Test
    void goesFromHandedInToLocked() throws Exception {
        move(jonas, jonas, "submitted", "", 302);
        assertThat(page(jonas, jonas).text()).contains("Handed in by Jonas Pell");
        move(jonas, jonas, "approved", "1", 422);
        move(jonas, brannoc, "approved", "1", 302);
        move(jonas, brannoc, "locked", "2", 422);
        move(jonas, ada, "locked", "1", 409);
        move(jonas, ada, "locked", "2", 302);
        move(jonas, ada, "locked", "2", 302);
        Document page = page(jonas, jonas);
        assertThat(page.text()).contains("Approved by Brannoc Tull").contains("Locked by Ada Fenn");
        assertThat(move(jonas, ada, "open", "3", 422).text()).contains("This week is locked");
    }

    @Test
    void sendsAnApprovedWeekBackWithTheReason() throws Exception {
        move(jonas, ada, "approved", "", 302);
        move(jonas, jonas, "open", "1", 422);
        mvc.perform(request("open", "1").param("note", "Friday is missing").with(signedIn(brannoc)))
                .andExpect(status().is(302));
        assertThat(page(jonas, jonas).text()).contains("Sent back: Friday is missing");
        days.logged(jonas, MONDAY.plusDays(4), seat, "Glue up", 60);
    }

    @Test
    void nobodyApprovesForThemselvesButTheOwner() throws Exception {
        move(brannoc, brannoc, "approved", "", 422);
        move(ada, brannoc, "approved", "", 422);
        move(ada, ada, "approved", "", 302);
    }

    @Test
    void aWeekThatRunsIsNotLocked() throws Exception {
        mvc.perform(post("/weeks/" + TODAY).param("to", "approved").with(csrf()).with(signedIn(ada)))
                .andExpect(status().is(302));
        mvc.perform(post("/weeks/" + TODAY)
                        .param("to", "locked")
                        .param("version", "1")
                        .with(csrf())
                        .with(signedIn(ada)))
                .andExpect(status().is(422));
    }

    @Test
    void aFixedWeekKeepsItsHoursOnEveryWay() throws Exception {
        lock();
        SheetForm more = new SheetForm();
        more.row("task:" + seat.task("Glue up"), "direct", "1");
        String day = "/days/2026-11-17?person=" + jonas.personId();
        Document refused = sent(more.sentTo(day), ada, 422);
        assertThat(refused.text()).contains("This week is locked");
        assertThat(refused.select("input[data-hours]").eachAttr("value")).contains("1");

        SheetForm here = new SheetForm().row(tuesday, "0", "task:" + seat.task("Glue up"), "direct", "11 h");
        sent(here.sentTo(day), ada, 302);
        sent(post("/entries/" + tuesday + "/deletion").param("version", "0").with(csrf()), ada, 422);
        sent(
                post("/entries/" + tuesday)
                        .param("version", "0")
                        .param("date", "2026-11-24")
                        .param("what", "task:" + seat.task("Glue up"))
                        .param("hourClass", "direct")
                        .param("time", "11 h")
                        .with(csrf()),
                ada,
                422);
        sent(post("/days/2026-11-20/mark").param("kind", "off").with(csrf()), jonas, 422);
        sent(
                post("/days/2026-11-17/undo")
                        .param("change", "i:" + tuesday + ":0")
                        .with(csrf()),
                jonas,
                422);
        assertThat(days.minutes(jonas, MONDAY.plusDays(1))).isEqualTo(660);
    }

    @Test
    void theDatabaseKeepsAFixedWeekByItself() throws Exception {
        lock();
        refusedByDatabase("update time_entry set minutes = 60 where id = '" + tuesday + "'");
        refusedByDatabase("update time_entry set on_date = '2026-11-25' where id = '" + tuesday + "'");
        refusedByDatabase("delete from time_entry where id = '" + tuesday + "'");
        refusedByDatabase("update work_week set state = 'open' where person_id = '" + jonas.personId() + "'");
        refusedByDatabase("delete from work_week where person_id = '" + jonas.personId() + "'");
        refusedByDatabase("insert into day_mark (person_id, on_date, kind, marked_by, version) values ('"
                + jonas.personId() + "', '2026-11-20', 'off', '" + ada.personId() + "', 0)");
        assertThatThrownBy(() -> days.logged(jonas, MONDAY, seat, "Glue up", 30))
                .hasStackTraceContaining("approved or locked");
        UUID elsewhere = days.logged(jonas, TODAY, seat, "Glue up", 30);
        refusedByDatabase("update time_entry set on_date = '2026-11-17' where id = '" + elsewhere + "'");
        refusedByDatabase("update time_entry set correction = true, reason = 'x' where id = '" + elsewhere + "'");
    }

    private void refusedByDatabase(String sql) {
        assertThatThrownBy(() -> people.asShop(() -> jdbc.sql(sql).update()))
                .as(sql)
                .hasStackTraceContaining("lock");
    }

    @Test
    void everySumHoldsACorrection() throws Exception {
        lock();
        String id = Ids.next().toString();
        correct(id, "9h30", "the drive was counted twice", brannoc, 302);
        correct(id, "9h30", "the drive was counted twice", brannoc, 302);

        Document week = page(jonas, ada);
        assertThat(week.select("tfoot").text()).contains("44 h 30");
        assertThat(week.text())
                .contains("It came to 46 h when it was approved, and comes to 44 h 30 now")
                .contains("-1 h 30")
                .contains("the drive was counted twice")
                .contains("Brannoc Tull");
        assertThat(get("/hours?week=2026-11-17", ada).text()).contains("44 h 30");
        assertThat(get("/jobs/" + seat.number() + "/hours", ada).text())
                .contains("20 h 30")
                .contains("the drive was counted twice");
        String books = mvc.perform(MockMvcRequestBuilders.get("/books/hours.csv?from=2026-11-16&to=2026-11-22")
                        .with(signedIn(people.bookkeeper())))
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(books)
                .contains("direct,-90,-1.50,12.00")
                .contains(",2026-11-25")
                .doesNotContain("counted twice");
        assertThat(jdbc.sql("select sum(minutes)::int from costing_entry where job_id = ?")
                        .param(seat.id())
                        .query(Integer.class)
                        .single())
                .isEqualTo(22 * 60 - 90);
        assertThat(jdbc.sql("select minutes from costing_job where job_id = ?")
                        .param(seat.id())
                        .query(Integer.class)
                        .single())
                .isEqualTo(22 * 60 - 90);
    }

    @Test
    void aCorrectionNeedsALockedWeekAReasonAndADifference() throws Exception {
        assertThat(correct(Ids.next().toString(), "9", "typed wrong", ada, 422).text())
                .contains("not locked");
        lock();
        assertThat(correct(Ids.next().toString(), "11", "typed wrong", ada, 422).text())
                .contains("stands there already");
        Document refused = correct(Ids.next().toString(), "9x", "", ada, 422);
        assertThat(refused.select("#time").val()).isEqualTo("9x");
        correct(Ids.next().toString(), "25", "typed wrong", ada, 422);
        correct(Ids.next().toString(), "9", "typed wrong", jonas, 403);
        correct(Ids.next().toString(), "0", "it was Wednesday", ada, 302);
        assertThat(days.minutes(jonas, MONDAY.plusDays(1))).isZero();
        assertThatThrownBy(
                        () -> people.asShop(() -> jdbc.sql("""
                        insert into time_entry (id, person_id, on_date, job_id, task_id, hour_class, minutes, reason, logged_by,
                            logged_at, version, correction)
                        select gen_random_uuid(), person_id, on_date, job_id, task_id, hour_class, -1, 'x', logged_by, logged_at, 0, true
                        from time_entry where id = ?""").param(tuesday).update()))
                .hasStackTraceContaining("no more than is there");
    }

    @Test
    void aHelperSeesOnlyHisOwnWeek() throws Exception {
        mvc.perform(MockMvcRequestBuilders.get("/weeks/2026-11-16?person=" + ada.personId())
                        .with(signedIn(jonas)))
                .andExpect(status().isNotFound());
        mvc.perform(post("/weeks/2026-11-16")
                        .param("to", "submitted")
                        .param("person", ada.personId().toString())
                        .with(csrf())
                        .with(signedIn(jonas)))
                .andExpect(status().isNotFound());
        days.logged(ada, MONDAY, seat, "Glue up", 137);
        assertThat(get("/weeks/2026-11-16", jonas).text())
                .doesNotContain("2 h 17")
                .doesNotContain("Ada Fenn");
    }

    @Test
    void remindsOfAMissingDayOnTodaysOwnSheet() throws Exception {
        assertThat(get("/", jonas).select(".missing li").eachText())
                .containsExactly(
                        "No hours yet on Fri 20 Nov Off",
                        "No hours yet on Mon 23 Nov Off",
                        "No hours yet on Tue 24 Nov Off");
        assertThat(get("/days/2026-11-25?person=" + jonas.personId(), ada).select(".missing"))
                .isEmpty();
        sent(
                post("/days/2026-11-23/mark")
                        .param("kind", "off")
                        .param("to", "today")
                        .with(csrf()),
                jonas,
                302);
        lock();
        assertThat(get("/", jonas).select(".missing li").eachText()).containsExactly("No hours yet on Tue 24 Nov Off");
    }

    @Test
    void aDayOfALockedWeekIsReadNotTyped() throws Exception {
        lock();
        Document day = get("/days/2026-11-17", jonas);
        assertThat(day.text()).contains("This week is locked");
        Element spare = day.select("template").remove().first();
        assertThat(spare).as("for other days, where there is no signal").isNotNull();
        assertThat(spare.select("input[data-hours]:not([readonly])")).isNotEmpty();
        assertThat(day.select("button[value=save]:not(.vh), #line")).isEmpty();
        assertThat(day.select("input[data-hours]")).hasSize(1);
        assertThat(day.select(".row input:not([type=hidden]):not([readonly]), .row select:not([disabled])"))
                .isEmpty();
        assertThat(get("/entries/" + tuesday, ada).select("main form")).isEmpty();
    }

    @Test
    void namesNoWeekThatIsNone() throws Exception {
        for (String address : new String[] {
            "/weeks/x", "/weeks/2026-12-07", "/weeks/2026-11-16?person=" + UUID.randomUUID(), "/weeks/1999-01-01"
        }) {
            mvc.perform(MockMvcRequestBuilders.get(address).with(signedIn(ada))).andExpect(status().isNotFound());
        }
    }

    private void lock() throws Exception {
        move(jonas, ada, "approved", "", 302);
        move(jonas, ada, "locked", "1", 302);
    }

    private Document correct(String id, String really, String reason, SignedIn me, int code) throws Exception {
        return sent(
                post("/weeks/2026-11-16/corrections")
                        .param("person", jonas.personId().toString())
                        .param("id", id)
                        .param("date", "2026-11-17")
                        .param("what", "task:" + seat.task("Glue up"))
                        .param("hourClass", "direct")
                        .param("time", really)
                        .param("reason", reason)
                        .with(csrf()),
                me,
                code);
    }

    private Document move(SignedIn whose, SignedIn me, String to, String version, int code) throws Exception {
        return sent(
                post("/weeks/2026-11-16")
                        .param("to", to)
                        .param("version", version)
                        .param("person", whose.personId().toString())
                        .with(csrf()),
                me,
                code);
    }

    private MockHttpServletRequestBuilder request(String to, String version) {
        return post("/weeks/2026-11-16")
                .param("to", to)
                .param("version", version)
                .param("person", jonas.personId().toString())
                .with(csrf());
    }

    private Document sent(MockHttpServletRequestBuilder request, SignedIn me, int code) throws Exception {
        MvcResult result = mvc.perform(request.with(signedIn(me))).andReturn();
        Document page = Jsoup.parse(result.getResponse().getContentAsString());
        assertThat(result.getResponse().getStatus())
                .as(() -> page.select("main").text())
                .isEqualTo(code);
        return page;
    }

    private Document page(SignedIn whose, SignedIn me) throws Exception {
        return get("/weeks/2026-11-18?person=" + whose.personId(), me);
    }

    private Document get(String address, SignedIn me) throws Exception {
        return Jsoup.parse(mvc.perform(MockMvcRequestBuilders.get(address).with(signedIn(me)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }
}
