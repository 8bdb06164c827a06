package org.tallywright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import java.util.List;
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

/** The day sheet in a basement: opened and saved with the line down, sent when it is up, and never in another's name. */
@AppTest
class OfflineBrowserTest {
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
    private SignedIn jonas;

    @BeforeEach
    void aShop() {
        ada = people.owner();
        jonas = people.helper();
        Phone.mayEnter(people, jdbc, encoder, ada, jonas);
        days.job("Window seat, north bay", "Rip hardwood", "Sand to 150");
    }

    @Test
    void opensAndSavesWithoutASignalAndSendsOnceItIsBack() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            phone.tab.open("/");
            assertThat(phone.tab.text()).contains("No signal. This is the day as this phone last saw it");
            phone.type("Sand to 150", "1h15");
            phone.keep(ada);
            assertThat(phone.tab.text())
                    .contains("Kept on this phone. It goes out by itself", "Sand to 150", "1h15", "Waits for a signal");
            assertThat(phone.tab.page.locator("[data-day-total]").innerText()).isEqualTo("1 h 15");
            assertThat(minutes()).isEmpty();

            phone.tab.open("/");
            phone.tab.page.waitForSelector(".queue .row");
            assertThat(phone.tab.text())
                    .as("opened again, still without a signal")
                    .contains("1h15", "Waits for a signal");
            assertThat(Axe.findings(phone.tab.page)).isEmpty();

            phone.signalIsBack(ada);
            assertThat(minutes()).containsExactly(75);
            phone.tab.page.waitForCondition(() -> !phone.tab.text().contains("Waits for a signal"));
            phone.tab.open("/");
            assertThat(phone.tab.page.locator(".row[data-state=saved]").innerText())
                    .contains("Sand to 150");
            assertThat(phone.tab.complaints).allMatch(line -> line.contains("ERR_"));
        }
    }

    @Test
    void keepsWhatTheServerRefusesAndBringsItBack() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            phone.type("Sand to 150", "half past nonsense");
            phone.keep(ada);
            phone.type("Sand to 150", "20m");
            phone.keep(ada);
            phone.signalIsBack(ada);
            assertThat(minutes()).as("the one after it is not held up").containsExactly(20);
            phone.tab.open("/");
            phone.tab.page.waitForSelector(".queue .row");
            assertThat(phone.tab.text()).contains("Not taken", "half past nonsense");
            assertThat(Axe.findings(phone.tab.page)).isEmpty();

            phone.tab.press("Look at it");
            assertThat(phone.tab.text()).contains("Not saved yet");
            Locator box = phone.tab.page.locator(".row[data-state=refused] input[data-hours]");
            assertThat(box.inputValue()).isEqualTo("half past nonsense");
            assertThat(phone.waiting(ada)).as("kept until it is saved").isEqualTo(1);
            box.fill("30m");
            phone.tab.press("Save the day");
            assertThat(phone.tab.text())
                    .as("the server's question stands beside it")
                    .contains("Add 30 min to it?");
            assertThat(phone.waiting(ada)).as("kept until it is answered").isEqualTo(1);
            phone.tab.press("It is right");
            assertThat(phone.tab.said()).contains("Saved. The day comes to 50 min");
            assertThat(minutes()).containsExactlyInAnyOrder(20, 30);
            assertThat(phone.waiting(ada)).isZero();
        }
    }

    @Test
    void anEditOfASavedEntryWaitsInItsRow() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.type("Sand to 150", "40m");
            phone.tab.press("Save the day");
            assertThat(phone.tab.said()).contains("Saved. The day comes to 40 min");
            phone.wire.cut();
            Locator box = phone.tab.page.locator(".row[data-state=saved] input[data-hours]");
            box.fill("50m");
            phone.keep(ada);
            Locator row = phone.tab.page.locator(".day > .sheet > .row[data-state=queued]");
            assertThat(row.innerText()).contains("Waits for a signal");
            row.locator("input[data-hours]").fill("55m");
            phone.keep(ada);
            phone.signalIsBack(ada);
            assertThat(minutes()).as("typed over what was still waiting").containsExactly(55);
        }
    }

    @Test
    void theQueueOutlivesTheSessionAndNobodyElseSeesIt() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            phone.tab.open("/");
            phone.type("Sand to 150", "35m");
            phone.keep(ada);
            // First the session, so that nothing goes out with it once the line is there again.
            jdbc.sql("delete from spring_session").update();
            phone.wire.mend();

            phone.tab.open("/");
            assertThat(phone.tab.path()).startsWith("/sign-in");
            assertThat(minutes()).isEmpty();
            phone.signIn(jonas);
            assertThat(phone.tab.text()).doesNotContain("35m", "Waits for a signal", "Ada");
            phone.type("Rip hardwood", "25m");
            phone.tab.press("Save the day");
            phone.wire.cut();
            phone.tab.open("/");
            assertThat(phone.tab.page.content())
                    .as("his copy, not hers")
                    .contains("Jonas Pell")
                    .doesNotContain("Ada Fenn");
            assertThat((List<?>) phone.tab.page.evaluate("() => caches.keys()"))
                    .noneMatch(name -> name.equals("pages-" + ada.personId()));
            phone.wire.mend();
            phone.tab.open("/");
            phone.tab.click(phone.tab.page.locator("form[action='/sign-out'] button"));

            phone.signIn(ada);
            phone.awaitSent(ada);
            assertThat(jdbc.sql("select minutes from time_entry where person_id = ?")
                            .param(ada.personId())
                            .query(Integer.class)
                            .list())
                    .containsExactly(35);
            assertThat(jdbc.sql("select minutes from time_entry where person_id = ?")
                            .param(jonas.personId())
                            .query(Integer.class)
                            .list())
                    .containsExactly(25);
        }
    }

    @Test
    void warnsAtTheWayOutWhileSomethingWaits() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            phone.tab.open("/");
            phone.type("Sand to 150", "35m");
            phone.keep(ada);
            Locator out = phone.tab.page.locator("form[action='/sign-out'] button");
            out.click();
            assertThat(phone.tab.page.locator(".queue-leaving").innerText()).contains("not sent yet: 1");
            assertThat(Axe.findings(phone.tab.page)).isEmpty();
            phone.tab.click(out);
            assertThat(phone.tab.text())
                    .as("without a signal, nobody is signed out")
                    .contains("This page needs a signal");
        }
    }

    @Test
    void anyDayOpensWithoutASignal() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.type("Sand to 150", "40m");
            phone.tab.press("Save the day");
            phone.tab.open("/");
            phone.wire.cut();
            phone.tab.open("/days/2026-11-24");
            assertThat(phone.tab.text()).contains("Tuesday 24 November 2026").doesNotContain("Saved");
            phone.type("Sand to 150", "45m");
            phone.keep(ada);
            phone.signalIsBack(ada);
            assertThat(jdbc.sql("select on_date || ' ' || minutes from time_entry order by on_date")
                            .query(String.class)
                            .list())
                    .containsExactly("2026-11-24 45", "2026-11-25 40");
            phone.wire.cut();
            phone.tab.open("/jobs");
            assertThat(phone.tab.text()).contains("This page needs a signal");
        }
    }

    private List<Integer> minutes() {
        return jdbc.sql("select minutes from time_entry order by id")
                .query(Integer.class)
                .list();
    }
}
