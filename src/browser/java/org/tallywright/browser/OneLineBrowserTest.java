package org.tallywright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.SelectOption;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.tallywright.AppTest;
import org.tallywright.daylog.SampleDays;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

/** A whole day in one line: heard while it is typed, asked where it may mean two things, saved. */
@AppTest
class OneLineBrowserTest {
    private static final String LINE = "bookcase doors 2h30, sanding 45m, rework 20m hinge side";

    @LocalServerPort
    private int port;

    @Autowired
    private SamplePeople people;

    @Autowired
    private SampleDays days;

    @Autowired
    private JdbcClient jdbc;

    @Autowired
    private PasswordEncoder encoder;

    private SignedIn ada;
    private SampleDays.SampleJob bookcase;
    private SampleDays.SampleJob pantry;

    @BeforeEach
    void twoJobsThatAreSanded() {
        ada = people.owner();
        Phone.mayEnter(people, jdbc, encoder, ada);
        bookcase = days.job("Bookcase, study", "Build doors", "Sand to 150");
        pantry = days.job("Pantry", "Sand to 150", "Fit drawers");
    }

    @Test
    void isHeardAskedAndSaved() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.tab.fill("line", LINE);
            heardAsTyped(phone);
            phone.tab.press("Save the day");
            assertThat(jdbc.sql("select count(*) from time_entry")
                            .query(Integer.class)
                            .single())
                    .as("nothing is saved before it was seen")
                    .isZero();
            answer(phone);
            phone.tab.press("Save the day");
            assertThat(phone.tab.said()).contains("Saved. The day comes to 3 h 35");
            assertThat(phone.waiting(ada)).isZero();
            saved();
        }
    }

    /** Without a signal it waits as it was typed, is asked about when it has gone out, and is saved once. */
    @Test
    void waitsForASignalAndIsThenAsked() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            phone.tab.open("/");
            phone.tab.fill("line", LINE);
            heardAsTyped(phone);
            phone.keep(ada);
            phone.signalIsBack(ada);
            phone.tab.open("/");
            phone.tab.page.waitForSelector(".queue .row[data-state=refused]");
            assertThat(phone.tab.text()).contains("Not taken", LINE);
            phone.tab.press("Look at it");
            answer(phone);
            phone.tab.press("Save the day");
            assertThat(phone.tab.said()).contains("Saved. The day comes to 3 h 35");
            assertThat(phone.waiting(ada)).isZero();
            saved();
        }
    }

    private static void heardAsTyped(Phone phone) {
        Locator heard = phone.tab.page.locator("[data-line-heard] li b");
        assertThat(heard.allInnerTexts()).containsExactly("2 h 30", "45 min", "20 min");
        assertThat(phone.tab.page.locator("[data-day-total]").innerText()).isEqualTo("3 h 35");
    }

    private void answer(Phone phone) {
        assertThat(phone.tab.text()).contains("From your line: sanding 45m");
        Locator sanding = asked(phone, "sanding 45m");
        assertThat(sanding.locator("optgroup[label=Perhaps] option").allInnerTexts())
                .as("both that are sanded, and nothing else")
                .containsExactlyInAnyOrder(bookcase.number() + " Sand to 150", pantry.number() + " Sand to 150");
        choose(sanding, bookcase, "Sand to 150");
        choose(asked(phone, "rework 20m hinge side"), bookcase, "Build doors");
    }

    private static Locator asked(Phone phone, String part) {
        Locator row = phone.tab
                .page
                .locator(".day > .sheet > .row[data-state=refused]")
                .filter(new Locator.FilterOptions().setHasText(part));
        assertThat(row.count()).as("asked about " + part).isEqualTo(1);
        return row;
    }

    private static void choose(Locator row, SampleDays.SampleJob job, String task) {
        row.locator("select[name$='.what']").selectOption(new SelectOption().setValue("task:" + job.task(task)));
    }

    private void saved() {
        assertThat(jdbc.sql("""
                        select t.name || ' ' || e.minutes || ' ' || e.hour_class || ' ' || e.reason
                        from time_entry e join task t on t.id = e.task_id where t.job_id = ? order by e.minutes desc""").param(bookcase.id()).query(String.class).list())
                .containsExactly(
                        "Build doors 150 direct ", "Sand to 150 45 direct ", "Build doors 20 rework hinge side");
        assertThat(jdbc.sql("select count(*) from time_entry")
                        .query(Integer.class)
                        .single())
                .isEqualTo(3);
    }
}
