package org.tallywright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.time.Duration;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.daylog.SampleDays;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

/** The clock on two devices, with and without script, and in a copy without a signal. */
@AppTest
class ClockBrowserTest {
    @LocalServerPort
    private int port;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleDays days;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    PasswordEncoder encoder;

    @Autowired
    TestClock clock;

    SignedIn ada;

    @BeforeEach
    void aShop() {
        ada = people.owner();
        Phone.mayEnter(people, jdbc, encoder, ada);
        days.job("Window seat, north bay", "Rip hardwood", "Sand to 150");
    }

    @Test
    void isStartedOnOneDeviceAndPausedOnAnother() {
        try (Tab phone = signedIn(Chrome.somebody(Chrome.PHONE));
                Tab laptop = signedIn(Chrome.somebody(Chrome.LAPTOP))) {
            row(phone, "Rip hardwood").locator("input[data-hours]").fill("2h30");
            phone.click(row(phone, "Sand to 150").locator(".clock-start"));
            assertThat(phone.text()).contains("The clock runs: Sand to 150");
            assertThat(row(phone, "Rip hardwood").locator("input[data-hours]").inputValue())
                    .isEqualTo("2h30");
            clean(phone);
            clock.advance(Duration.ofMinutes(72));

            laptop.open("/");
            assertThat(laptop.page.locator(".clock-line").innerText()).contains("1 h 12");
            laptop.press("Pause");
            assertThat(laptop.said()).contains("The clock rests");
            clean(laptop);

            phone.open("/");
            phone.click(row(phone, "Sand to 150").getByText("Put it in"));
            assertThat(phone.said()).contains("Saved. The day comes to");
            assertThat(phone.page.locator(".clock-offer").count()).isZero();
            assertThat(minutes("Sand to 150")).isEqualTo(72);
            assertThat(phone.complaints).isEmpty();
        }
    }

    @Test
    void asksWithoutScriptWhenAForgottenOneWasStopped() {
        try (Tab phone = signedIn(Chrome.withoutScript(Chrome.PHONE))) {
            phone.click(row(phone, "Sand to 150").locator(".clock-start"));
            clock.advance(Duration.ofHours(18));
            phone.open("/");
            assertThat(phone.page.locator(".clock .ask").innerText()).contains("When did you stop?");
            Locator box = phone.page.locator(".clock input[name^='ended.']");
            box.fill("1h30");
            phone.page.waitForNavigation(() -> box.press("Enter"));
            assertThat(phone.said()).contains("came to 1 h 30");
        }
    }

    @Test
    void aForgottenClockIsClean() {
        try (Tab phone = signedIn(Chrome.somebody(Chrome.PHONE))) {
            phone.click(row(phone, "Sand to 150").locator(".clock-start"));
            clock.advance(Duration.ofHours(6));
            phone.open("/");
            clean(phone);
            Locator box = phone.page.locator(".clock input[name^='ended.']");
            box.fill("4");
            phone.page.waitForNavigation(() -> box.press("Enter"));
            assertThat(phone.text()).contains("may be a time or a length");
            clean(phone);
        }
    }

    @Test
    void aCopyWithoutASignalHasNoClock() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            assertThat(phone.tab.page.locator(".clock-start").first().isVisible())
                    .isTrue();
            phone.wire.cut();
            phone.tab.open("/");
            assertThat(phone.tab.text()).contains("No signal");
            assertThat(phone.tab.page.locator(".clock-start").first().isVisible())
                    .isFalse();
            phone.wire.mend();
        }
    }

    private int minutes(String task) {
        return jdbc.sql("select sum(e.minutes) from time_entry e join task t on t.id = e.task_id where t.name = ?")
                .param(task)
                .query(Integer.class)
                .single();
    }

    private static Locator row(Tab tab, String task) {
        return tab.page
                .locator(".day .row", new Page.LocatorOptions().setHasText(task))
                .first();
    }

    private static void clean(Tab tab) {
        assertThat(Axe.findings(tab.page)).isEmpty();
        tab.page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        assertThat(Axe.colours(tab.page)).isEmpty();
        tab.page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
        tab.page.setViewportSize(320, 844);
        assertThat((Boolean) tab.page.evaluate("document.documentElement.scrollWidth <= innerWidth"))
                .as("fits 320 px")
                .isTrue();
        tab.page.setViewportSize(Chrome.PHONE, 844);
    }

    private Tab signedIn(BrowserContext context) {
        Tab tab = new Tab(context, "http://127.0.0.1:" + port);
        tab.open("/sign-in");
        tab.fill("signInName", "ada").fill("password", Phone.PASSWORD).press("Sign in");
        tab.open("/");
        return tab;
    }
}
