package org.tallywright.daylog.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.daylog.SampleDays.TODAY;
import static org.tallywright.people.SamplePeople.signedIn;

import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.daylog.SampleDays;
import org.tallywright.daylog.SampleDays.SampleJob;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

@AppTest
class EntryWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleDays days;

    SignedIn ada;
    SignedIn jonas;
    SampleJob seat;
    UUID entry;

    @BeforeEach
    void jonasLoggedTwoHours() {
        ada = people.owner();
        jonas = people.helper();
        seat = days.job("Window seat", "Finish sand", "Glue up");
        entry = days.logged(jonas, TODAY, seat, "Finish sand", 120);
    }

    @Test
    void theOwnerCorrectsItAndTheTrailNamesBoth() throws Exception {
        mvc.perform(edit("0", "3", "2026-11-25").with(signedIn(ada))).andExpect(redirectedUrl("/entries/" + entry));
        Document page = page("/entries/" + entry, jonas);
        assertThat(page.selectFirst(".trail").text())
                .contains("Jonas Pell logged it")
                .contains("Ada Fenn changed it")
                .contains("2 h 3 h");
    }

    @Test
    void aRepeatedCorrectionChangesNothing() throws Exception {
        mvc.perform(edit("0", "3", "2026-11-25").with(signedIn(ada)));
        mvc.perform(edit("0", "3", "2026-11-25").with(signedIn(ada))).andExpect(status().is(302));
        assertThat(days.trailOf(entry)).containsExactly("insert", "update");
    }

    @Test
    void movesToTheDayItBelongsTo() throws Exception {
        mvc.perform(edit("0", "2", "2026-11-24").with(signedIn(jonas))).andExpect(status().is(302));
        assertThat(days.minutes(jonas, TODAY)).isZero();
        assertThat(days.minutes(jonas, TODAY.minusDays(1))).isEqualTo(120);
    }

    @Test
    void refusesBesideTheBoxAndKeepsWhatWasTyped() throws Exception {
        Document page = refused(edit("0", "26", "2026-11-99"), ada, 422);
        assertThat(page.selectFirst("#time").val()).isEqualTo("26");
        assertThat(page.selectFirst("#time-error").text()).contains("did you mean 2.6?");
        assertThat(page.selectFirst("#date-error").text()).contains("2026-11-24");
        assertThat(refused(edit("0", "", "2026-11-25"), ada, 422)
                        .selectFirst("#time-error")
                        .text())
                .contains("how long");
        assertThat(refused(edit("0", "2", "2026-11-26"), ada, 422).text()).contains("has not come yet");
    }

    @Test
    void showsWhatSomebodyElseSavedMeanwhile() throws Exception {
        mvc.perform(edit("0", "3", "2026-11-25").with(signedIn(ada)));
        Document page = refused(edit("0", "4", "2026-11-25"), jonas, 409);
        assertThat(page.text()).contains("It now says: 3 h");
        assertThat(page.select("table tbody tr").eachText()).contains("Hours 3 h 4", "Day 2026-11-25 2026-11-25");
        assertThat(page.selectFirst("#time").val()).isEqualTo("4");
        assertThat(page.selectFirst("input[name=version]").val()).isEqualTo("1");
    }

    @Test
    void keepsWhatWasTypedForAnEntryTakenOffMeanwhile() throws Exception {
        mvc.perform(post("/entries/" + entry + "/deletion")
                .param("version", "0")
                .with(csrf())
                .with(signedIn(ada)));

        Document page = refused(edit("0", "3", "2026-11-25"), jonas, 409);

        assertThat(page.text()).contains("taken off the day meanwhile");
        assertThat(page.select("table tbody tr").eachText()).contains("Hours taken off the day 3");
        var anew = post(page.selectFirst("form:has([name=row.0.time])").attr("action"))
                .with(csrf());
        page.select("[name^=row.0.]").forEach(box -> anew.param(box.attr("name"), box.val()));
        mvc.perform(anew.with(signedIn(jonas))).andExpect(status().is(302));
        assertThat(days.minutes(jonas, TODAY)).isEqualTo(180);

        SignedIn wenna = people.person("Wenna Tarr", org.tallywright.web.Role.HELPER);
        refused(edit("0", "3", "2026-11-25"), wenna, 404);
    }

    @Test
    void showsBothVersionsBeforeAChangedEntryComesOff() throws Exception {
        mvc.perform(edit("0", "3", "2026-11-25").with(signedIn(ada)));
        var late = post("/entries/" + entry + "/deletion").param("version", "0").with(csrf());
        assertThat(refused(late, jonas, 409).select("table tbody tr").eachText())
                .contains("Hours 3 h taken off the day");
        assertThat(days.minutes(jonas, TODAY)).isEqualTo(180);
    }

    @Test
    void comesOffTheDayAndBackByOneButton() throws Exception {
        var off = mvc.perform(post("/entries/" + entry + "/deletion")
                        .param("version", "0")
                        .with(csrf())
                        .with(signedIn(jonas)))
                .andExpect(redirectedUrl("/days/2026-11-25"))
                .andReturn();
        assertThat(days.minutes(jonas, TODAY)).isZero();
        assertThat(page("/entries/" + entry, jonas).text())
                .contains("taken off its day")
                .contains("took it off the day");

        List<?> changes = (List<?>) off.getFlashMap().get("undo");
        mvc.perform(post("/days/2026-11-25/undo")
                        .param("change", changes.get(0).toString())
                        .with(csrf())
                        .with(signedIn(jonas)))
                .andExpect(status().is(302));
        assertThat(days.minutes(jonas, TODAY)).isEqualTo(120);
    }

    @Test
    void isNotThereForAnotherHelperOrAnUnknownId() throws Exception {
        SignedIn wenna = people.person("Wenna Tarr", org.tallywright.web.Role.HELPER);
        for (String address : List.of("/entries/" + entry, "/entries/" + Ids.next(), "/entries/x")) {
            mvc.perform(get(address).with(signedIn(wenna))).andExpect(status().isNotFound());
        }
        mvc.perform(edit("0", "3", "2026-11-25").with(signedIn(wenna))).andExpect(status().isNotFound());
        mvc.perform(post("/entries/" + entry + "/deletion")
                        .param("version", "0")
                        .with(csrf())
                        .with(signedIn(wenna)))
                .andExpect(status().isNotFound());
        assertThat(days.minutes(jonas, TODAY)).isEqualTo(120);
    }

    private MockHttpServletRequestBuilder edit(String version, String time, String date) {
        return post("/entries/" + entry)
                .param("version", version)
                .param("time", time)
                .param("date", date)
                .param("what", "task:" + seat.task("Finish sand"))
                .param("hourClass", "direct")
                .param("note", "")
                .param("reason", "")
                .with(csrf());
    }

    private Document refused(MockHttpServletRequestBuilder request, SignedIn me, int code) throws Exception {
        return Jsoup.parse(mvc.perform(request.with(signedIn(me)))
                .andExpect(status().is(code))
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private Document page(String address, SignedIn me) throws Exception {
        return Jsoup.parse(mvc.perform(get(address).with(signedIn(me)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }
}
