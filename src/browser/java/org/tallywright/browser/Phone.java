package org.tallywright.browser;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.PlaywrightException;
import java.util.Date;
import java.util.List;
import java.util.Map;
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
        wire = new Wire(server);
        context = Chrome.somebody(Chrome.PHONE);
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
    }

    /** A page function that answers later cannot be waited for by the page itself. */
    void until(String asked, Object of) {
        tab.page.waitForCondition(() -> {
            try {
                return Boolean.TRUE.equals(tab.page.evaluate(asked, of));
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
