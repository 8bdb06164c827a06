package org.tallywright.daylog.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.daylog.SampleDays.TODAY;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.LocalDate;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.daylog.SampleDays;
import org.tallywright.daylog.SampleDays.SampleJob;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

@AppTest
class HoursPagesWebTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 11, 16);

    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleDays days;

    SignedIn ada;
    SignedIn jonas;
    SampleJob seat;

    @BeforeEach
    void aWeekIsLogged() {
        ada = people.owner();
        jonas = people.helper();
        seat = days.job("Window seat", "Finish sand", "Glue up");
        for (int day = 0; day < 4; day++) {
            days.logged(jonas, MONDAY.plusDays(day), seat, "Finish sand", 11 * 60);
        }
        days.logged(ada, TODAY, seat, "Glue up", 131);
    }

    @Test
    void sumsAWeekAndNamesItsGap() throws Exception {
        Document page = page("/hours?person=" + jonas.personId() + "&week=2026-11-18", ada);
        assertThat(page.select("tbody tr").first().text())
                .contains("11 h")
                .contains("44 h")
                .contains("4 h");
        assertThat(page.select("li.row").text()).contains("Fri 20 Nov");
        assertThat(page.text()).contains("local law decides");
    }

    @Test
    void namesEachFigureForTheNarrowScreen() throws Exception {
        Document page = page("/hours?week=2026-11-18", ada);
        assertThat(page.select("table.stack tbody tr").first().select("td").eachAttr("data-label"))
                .containsExactly(
                        "In the week",
                        "Over 40 h",
                        "Mon 16 Nov",
                        "Tue 17 Nov",
                        "Wed 18 Nov",
                        "Thu 19 Nov",
                        "Fri 20 Nov",
                        "Sat 21 Nov",
                        "Sun 22 Nov");
    }

    @Test
    void marksAGapOffWithOneTap() throws Exception {
        mvc.perform(post("/days/2026-11-20/mark")
                        .param("kind", "off")
                        .param("to", "hours")
                        .param("person", jonas.personId().toString())
                        .with(csrf())
                        .with(signedIn(ada)))
                .andExpect(status().is(302));
        Document page = page("/hours?person=" + jonas.personId() + "&week=2026-11-18", ada);
        assertThat(page.select("li.row").text()).doesNotContain("Fri 20 Nov");
        assertThat(page.select("td.mark").text()).isEqualTo("off");
    }

    @Test
    void showsEverybodyToTheOwnerAndOvertimeAlsoToTheBookkeeper() throws Exception {
        for (SignedIn reader : java.util.List.of(ada, people.bookkeeper())) {
            Document page = page("/hours?week=2026-11-18", reader);
            assertThat(page.select("tbody th").eachText()).contains("Ada Fenn", "Jonas Pell");
            assertThat(page.select("thead").text()).contains("Over 40 h");
        }
        assertThat(page("/hours?week=2026-11-18", people.lead()).select("thead").text())
                .doesNotContain("Over 40 h");
    }

    @Test
    void givesTheBookkeeperNoWayIntoADay() throws Exception {
        assertThat(page("/hours?week=2026-11-18", people.bookkeeper()).select("a[href^=/days], form[action^=/days]"))
                .isEmpty();
    }

    @Test
    void aHelperSeesOnlyHisOwn() throws Exception {
        Document page = page("/hours?week=2026-11-25", jonas);
        assertThat(page.text())
                .doesNotContain("2 h 11")
                .doesNotContain("Ada Fenn")
                .doesNotContain("Over 40 h");
        mvc.perform(get("/hours?person=" + ada.personId()).with(signedIn(jonas)))
                .andExpect(status().isNotFound());

        Document job = page("/jobs/" + seat.number() + "/hours", jonas);
        assertThat(job.text())
                .doesNotContain("2 h 11")
                .doesNotContain("Ada Fenn")
                .doesNotContain("By person");
        assertThat(job.select("tbody a[href^=/entries/]")).hasSize(4);
        mvc.perform(get("/jobs/" + seat.number() + "/hours?person=" + ada.personId())
                        .with(signedIn(jonas)))
                .andExpect(status().isNotFound());
    }

    @Test
    void groupsSortsAndNarrowsTheHoursOfAJob() throws Exception {
        Document page = page("/jobs/" + seat.number() + "/hours?sort=hours", ada);
        assertThat(page.text()).contains("46 h 11 in 5 entries");
        assertThat(page.select(".stack tbody tr td.num").eachText())
                .startsWith("2 h 11")
                .endsWith("11 h");
        Document only = page("/jobs/" + seat.number() + "/hours?task=" + seat.task("Glue up"), ada);
        assertThat(only.text()).contains("Only: Glue up");
        assertThat(only.select(".stack tbody tr")).hasSize(1);
        assertThat(page("/jobs/" + seat.number() + "/hours?class=rework", ada).text())
                .contains("No hours yet");
    }

    @Test
    void answersStrangeAddressesWithNotFound() throws Exception {
        for (String address : java.util.List.of(
                "/hours?week=x",
                "/hours?person=" + java.util.UUID.randomUUID(),
                "/hours?person=x",
                "/jobs/99-999/hours",
                "/jobs/" + seat.number() + "/hours?task=x",
                "/jobs/" + seat.number() + "/hours?class=x")) {
            mvc.perform(get(address).with(signedIn(ada))).andExpect(status().isNotFound());
        }
        page("/jobs/" + seat.number() + "/hours?sort=;drop&page=-4", ada);
    }

    private Document page(String address, SignedIn me) throws Exception {
        return Jsoup.parse(mvc.perform(get(address).with(signedIn(me)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }
}
