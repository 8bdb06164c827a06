package org.tallywright.browser;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.PlaywrightException;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.tallywright.TestClock;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

/** A phone whose browser reaches the server over a {@link Wire}, with the day sheet on it. */
final class Phone implements AutoCloseable {
    static final String PASSWORD = "plumb level square";

    final Tab tab;
    final Wire wire;
    private final BrowserContext context;

    Phone(int server) {
        this(server, "America/New_York");
    }

    Phone(int server, String zone) {
        wire = new Wire(server);
        context = Chrome.somebody(Chrome.PHONE, zone);
        context.clock().setFixedTime(Date.from(TestClock.START));
        tab = new Tab(context, wire.home());
    }

    /** Gives people that samples made a way to sign in, by the first word of their name. */
    static void mayEnter(SamplePeople people, JdbcClient jdbc, PasswordEncoder encoder, SignedIn... all) {
        String hash = encoder.encode(PASSWORD);
        for (SignedIn one : all) {
            people.asShop(() -> jdbc.sql("update account set sign_in_name = ?, password_hash = ? where person_id = ?")
                    .params(signInName(one), hash, one.personId())
                    .update());
        }
    }

    private static String signInName(SignedIn one) {
        return one.name().split(" ")[0].toLowerCase(java.util.Locale.ROOT);
    }

    /** Signs in and waits until the sheet is kept on the phone. */
    void signIn(SignedIn person) {
        tab.open("/sign-in");
        tab.fill("signInName", signInName(person)).fill("password", PASSWORD).press("Sign in");
        tab.open("/");
        until(
                "async person => await Queue.note('who') === person && await (await caches.open('pages-' + person)).match('/') !== undefined",
                person.personId().toString());
    }

    /** Another window on the same phone. */
    Tab second() {
        return new Tab(context, wire.home());
    }

    BrowserContext context() {
        return context;
    }

    void clock(Instant now) {
        context.clock().setFixedTime(Date.from(now));
    }

    void type(String task, String hours) {
        type(tab, task, hours);
    }

    static void type(Tab tab, String task, String hours) {
        blankRow(tab, task).locator("input[data-hours]").fill(hours);
    }

    /** The row in which nothing of that task is saved yet. */
    static Locator blankRow(Tab tab, String task) {
        return tab.page
                .locator(".day > .sheet > .row:not([data-state])")
                .filter(new Locator.FilterOptions().setHasText(task))
                .first();
    }

    /** Saves without a signal and waits until it is kept. */
    void keep(SignedIn person) {
        keep(tab, person);
    }

    void keep(Tab shown, SignedIn person) {
        List<Object> before = numbers(shown, person);
        shown.page.locator("main button.button[value=save]").click();
        until(
                shown,
                "async ([person, before]) => (await Queue.of(person)).some(item => !before.includes(item.n))"
                        + " && !document.querySelector('form[aria-busy]')"
                        + " && document.querySelector('[data-queue-words]').textContent.startsWith('Kept on this phone')",
                List.of(person.personId().toString(), before));
    }

    @SuppressWarnings("unchecked")
    private static List<Object> numbers(Tab shown, SignedIn person) {
        return (List<Object>) shown.page.evaluate(
                "person => Queue.of(person).then(all => all.map(item => item.n))",
                person.personId().toString());
    }

    @SuppressWarnings("unchecked")
    List<Map<String, Object>> queue(SignedIn person) {
        return (List<Map<String, Object>>) tab.page.evaluate(
                "person => Queue.of(person)", person.personId().toString());
    }

    int waiting(SignedIn person) {
        return queue(person).size();
    }

    /** As the phone does when it notices a network, and then until nothing waits that was not refused. */
    void signalIsBack(SignedIn person) {
        wire.mend();
        tab.page.evaluate("dispatchEvent(new Event('online'))");
        awaitSent(person);
    }

    void awaitSent(SignedIn person) {
        until(
                "async person => !(await Queue.of(person)).some(item => !item.refused)",
                person.personId().toString());
        untilStill();
    }

    /** The sheet shows by itself what was sent from it; until it does, it may leave at any moment. */
    private void untilStill() {
        until(
                "() => document.readyState === 'complete' && !document.querySelector('.queue .row[data-state=queued]')"
                        + " && !('leaving' in document.documentElement.dataset)",
                null);
    }

    /** A page function that answers later cannot be waited for by the page itself. */
    void until(String asked, @Nullable Object of) {
        until(tab, asked, of);
    }

    static void until(Tab shown, String asked, @Nullable Object of) {
        shown.page.waitForCondition(() -> {
            try {
                return Boolean.TRUE.equals(shown.page.evaluate(asked, of));
            } catch (PlaywrightException anotherPageCame) {
                return false;
            }
        });
    }

    @Override
    public void close() {
        tab.close();
        wire.close();
    }
}
