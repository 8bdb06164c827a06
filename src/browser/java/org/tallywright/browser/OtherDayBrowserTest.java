package org.tallywright.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tallywright.daylog.SampleDays.TODAY;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.daylog.SampleDays;
import org.tallywright.daylog.WeekDesk;
import org.tallywright.daylog.WeekState;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

/** What a kept sheet turns into without a signal: the shop's day, another day, a day that stands still, one to come. */
@AppTest
class OtherDayBrowserTest {
    @LocalServerPort
    private int port;

    @Autowired
    private SamplePeople people;

    @Autowired
    private SampleDays days;

    @Autowired
    private WeekDesk weeks;

    @Autowired
    private JdbcClient jdbc;

    @Autowired
    private PasswordEncoder encoder;

    @Autowired
    private TestClock clock;

    private SignedIn ada;
    private SampleDays.SampleJob job;

    @BeforeEach
    void aShop() {
        ada = people.owner();
        Phone.mayEnter(people, jdbc, encoder, ada);
        job = days.job("Window seat, north bay", "Rip hardwood", "Sand to 150");
    }

    /** 13:40 on Wednesday in the shop is Thursday morning on this phone. */
    @Test
    void todayIsTheShopsDate() {
        try (Phone phone = new Phone(port, "Pacific/Auckland")) {
            phone.signIn(ada);
            phone.wire.cut();
            phone.tab.open("/");
            assertThat(heading(phone)).isEqualTo("Today, Wednesday 25 November 2026");
            phone.type("Sand to 150", "1h15");
            phone.keep(ada);
            phone.signalIsBack(ada);
            assertThat(logged()).containsExactly("2026-11-25 75");
        }
    }

    @Test
    void theNextDayOfTheShopBeginsWithItsOwnMidnight() {
        try (Phone phone = new Phone(port, "America/Los_Angeles")) {
            phone.signIn(ada);
            days.logged(ada, TODAY, job, "Sand to 150", 40);
            phone.tab.open("/");
            phone.wire.cut();
            // 00:40 on Thursday in New York, 21:40 on Wednesday on the phone.
            phone.clock(TestClock.START.plus(Duration.ofHours(11)));
            clock.advance(Duration.ofHours(11));
            phone.tab.open("/");
            assertThat(heading(phone)).isEqualTo("Today, Thursday 26 November 2026");
            phone.type("Sand to 150", "20m");
            phone.keep(ada);
            phone.signalIsBack(ada);
            assertThat(logged()).containsExactly("2026-11-25 40", "2026-11-26 20");
        }
    }

    @Test
    void aDayThatStandsStillTakesNothingAndLetsOtherDaysBeTyped() {
        days.logged(ada, TODAY, job, "Sand to 150", 40);
        weeks.move(ada.personId(), TODAY, WeekState.APPROVED, null, "", ada);
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            phone.tab.open("/");
            assertThat(phone.tab.text()).contains("This week is approved.");
            assertThat(phone.tab.offers("Save the day")).isFalse();
            assertThat(phone.tab.page.locator(".day input[data-hours]").isEditable())
                    .isFalse();
            assertThat(Axe.findings(phone.tab.page)).isEmpty();

            phone.tab.open("/days/2026-11-20");
            assertThat(phone.tab.text())
                    .contains("Friday 20 November 2026", "Something else")
                    .doesNotContain("This week is approved.", "Nothing is planned");
            assertThat(phone.tab
                            .page
                            .locator(".day input[data-hours]")
                            .evaluateAll("boxes => boxes.map(box => box.value)"))
                    .isEqualTo(List.of("", "", ""));
            phone.type("Sand to 150", "25m");
            phone.keep(ada);
            assertThat(Axe.findings(phone.tab.page)).isEmpty();

            phone.clock(TestClock.START.plus(Duration.ofDays(7)));
            clock.advance(Duration.ofDays(7));
            phone.tab.open("/");
            assertThat(heading(phone)).isEqualTo("Today, Wednesday 2 December 2026");
            phone.type("Rip hardwood", "2h");
            phone.keep(ada);
            phone.signalIsBack(ada);
            assertThat(logged()).containsExactly("2026-11-20 25", "2026-11-25 40", "2026-12-02 120");
        }
    }

    @Test
    void aDayToComeSaysSo() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            phone.tab.open("/days/2026-11-27");
            assertThat(phone.tab.text())
                    .contains("Friday 27 November 2026", "This day has not come yet.")
                    .doesNotContain("Sand to 150");
            assertThat(phone.tab.page.locator(".day input[data-hours]").count()).isZero();
        }
    }

    /** The kept sheet says "Saved." of a save long past; that is no answer to what is typed now. */
    @Test
    void aKeptSentenceForgetsNoDraft() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.type("Sand to 150", "40m");
            phone.tab.press("Save the day");
            assertThat(phone.tab.said()).contains("Saved.");
            phone.until(
                    "async person => (await (await (await caches.open('pages-' + person)).match('/')).text()).includes('data-saved')",
                    ada.personId().toString());
            phone.type("Rip hardwood", "35m");
            phone.wire.cut();
            // As if the form had gone off by itself and nothing had come back.
            phone.tab.page.evaluate(
                    "() => sessionStorage.setItem('tallywright.sent', document.querySelector('form.day').dataset.draft)");
            phone.tab.open("/");
            assertThat(phone.tab.text()).contains("Typed here before and not saved yet.");
            assertThat(Phone.blankRow(phone.tab, "Rip hardwood")
                            .locator("input[data-hours]")
                            .inputValue())
                    .isEqualTo("35m");
            phone.keep(ada);
            phone.signalIsBack(ada);
            assertThat(logged()).containsExactlyInAnyOrder("2026-11-25 40", "2026-11-25 35");
        }
    }

    private static String heading(Phone phone) {
        return phone.tab.page.locator("h1").innerText();
    }

    private List<String> logged() {
        return jdbc.sql("select on_date || ' ' || minutes from time_entry order by on_date, logged_at, id")
                .query(String.class)
                .list();
    }
}
