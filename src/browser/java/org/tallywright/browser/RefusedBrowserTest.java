package org.tallywright.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tallywright.daylog.SampleDays.TODAY;

import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.tallywright.AppTest;
import org.tallywright.daylog.SampleDays;
import org.tallywright.daylog.WeekDesk;
import org.tallywright.daylog.WeekState;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

/** What waited on the phone and was refused: it comes back with its reason, is put right, and then waits no longer. */
@AppTest
class RefusedBrowserTest {
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

    private SignedIn ada;
    private SampleDays.SampleJob job;

    @BeforeEach
    void aShop() {
        ada = people.owner();
        Phone.mayEnter(people, jdbc, encoder, ada);
        job = days.job("Window seat, north bay", "Rip hardwood", "Sand to 150");
    }

    @Test
    void whatIsTakenWhenItIsLookedAtWaitsNoLonger() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            phone.type("Sand to 150", "35m");
            phone.keep(ada);
            weeks.move(ada.personId(), TODAY, WeekState.APPROVED, null, "", ada);
            phone.signalIsBack(ada);
            phone.tab.open("/");
            phone.tab.page.waitForSelector(".queue .row[data-state=refused]");
            assertThat(phone.tab.text()).contains("Not taken", "Have it sent back first");

            weeks.move(
                    ada.personId(),
                    TODAY,
                    WeekState.OPEN,
                    weeks.of(ada.personId(), TODAY).version(),
                    "",
                    ada);
            phone.tab.press("Look at it");
            assertThat(phone.tab.said()).contains("Saved. The day comes to 35 min");
            nothingWaits(phone);
            assertThat(minutes()).containsExactly(35);
        }
    }

    @Test
    void whatIsPutRightByTheOffersButtonWaitsNoLonger() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            phone.type("Sand to 150", "35m");
            phone.keep(ada);
            people.asShop(() -> jdbc.sql("update job set state = 'closed', closed_on = ? where id = ?")
                    .params(TODAY, job.id())
                    .update());
            phone.signalIsBack(ada);
            phone.tab.open("/");
            phone.tab.page.waitForSelector(".queue .row[data-state=refused]");
            phone.tab.press("Look at it");
            assertThat(phone.waiting(ada)).as("kept until it is saved").isEqualTo(1);
            phone.tab.press("Make it a call-back");
            assertThat(phone.tab.said()).contains("Saved. The day comes to 35 min");
            nothingWaits(phone);
            assertThat(jdbc.sql("select hour_class from time_entry")
                            .query(String.class)
                            .list())
                    .containsExactly("call-back");
        }
    }

    @Test
    void aRefusedOneThatIsLeftUnsavedStays() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            refusedForItsTime(phone);
            phone.tab.press("Look at it");
            phone.tab.open("/");
            phone.type("Rip hardwood", "15m");
            phone.tab.press("Save the day");
            assertThat(phone.tab.said()).contains("Saved. The day comes to 15 min");
            phone.tab.page.waitForSelector(".queue .row[data-state=refused]");
            assertThat(phone.tab.text()).contains("half past nonsense");
            assertThat(minutes()).containsExactly(15);
        }
    }

    /** The signal goes away once more just when it is being put right; then another save follows on the same page. */
    @Test
    void aCorrectionWithoutASignalIsSavedOnceAndTheNextSaveIsItsOwn() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            refusedForItsTime(phone);
            phone.tab.press("Look at it");
            phone.wire.cut();
            phone.tab.page.locator(".row[data-state=refused] input[data-hours]").fill("30m");
            phone.tab.page.locator("main button.button[value=save]").click();
            phone.until(
                    "async person => (await Queue.of(person)).some(item => !item.refused) && !document.querySelector('form[aria-busy]')",
                    ada.personId().toString());
            assertThat(phone.tab.text()).contains("Waits for a signal").doesNotContain("Not saved yet", "Not taken");
            phone.type("Sand to 150", "15m");
            phone.keep(ada);
            assertThat(phone.waiting(ada)).isEqualTo(2);
            phone.signalIsBack(ada);
            assertThat(minutes()).containsExactly(30);
            phone.tab.open("/");
            phone.tab.page.waitForSelector(".queue .row[data-state=refused]");
            phone.tab.press("Look at it");
            assertThat(phone.tab.text())
                    .as("a second entry on one task is asked about")
                    .contains("Add 15 min to it?");
            phone.tab.press("It is right");
            nothingWaits(phone);
            assertThat(minutes()).containsExactlyInAnyOrder(30, 15);
        }
    }

    /** Nothing of the product is open; the browser wakes the worker. */
    @Test
    void theWorkerPutsARefusedOneAsideAndGoesOn() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            phone.type("Sand to 150", "half past nonsense");
            phone.keep(ada);
            phone.type("Rip hardwood", "20m");
            phone.keep(ada);
            CDPSession browser = phone.context().newCDPSession(phone.tab.page);
            AtomicReference<String> registration = new AtomicReference<>();
            browser.on(
                    "ServiceWorker.workerRegistrationUpdated",
                    event -> event.getAsJsonArray("registrations")
                            .forEach(one -> registration.set(
                                    one.getAsJsonObject().get("registrationId").getAsString())));
            browser.send("ServiceWorker.enable");
            phone.tab.page.waitForCondition(() -> registration.get() != null);
            phone.tab.page.navigate("about:blank");
            phone.wire.mend();
            JsonObject sync = new JsonObject();
            sync.addProperty("origin", phone.wire.home());
            sync.addProperty("registrationId", registration.get());
            sync.addProperty("tag", "queue");
            sync.addProperty("lastChance", true);
            browser.send("ServiceWorker.dispatchSyncEvent", sync);
            phone.tab.page.waitForCondition(() -> minutes().equals(List.of(20)));

            phone.tab.open("/");
            phone.tab.page.waitForSelector(".queue .row[data-state=refused]");
            assertThat(phone.tab.page.locator(".queue .row").innerText())
                    .contains("Not taken", "half past nonsense", "is not a length of time");
            assertThat(phone.waiting(ada)).isEqualTo(1);
        }
    }

    @Test
    void anEditBySomebodyElseMeanwhileIsNotTypedOver() {
        SignedIn brannoc = people.lead();
        UUID entry = days.logged(ada, TODAY, job, "Sand to 150", 40);
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            typedOver(phone, entry, "50m", "55m");
            editedBy(brannoc, entry);
            phone.signalIsBack(ada);
            assertThat(minutes()).containsExactly(70);
            phone.tab.open("/");
            phone.tab.page.waitForSelector(".queue .row[data-state=refused]");
            assertThat(phone.waiting(ada)).isEqualTo(2);
            assertThat(phone.tab.text()).contains("50m", "55m");
            phone.tab.press("Look at it");
            assertThat(phone.tab.text()).contains("Changed meanwhile. It now says: 1 h 10");
            Locator box = phone.tab.page.locator(".row[data-row='" + entry + "'] input[data-hours]");
            assertThat(box.inputValue()).isEqualTo("50m");
        }
    }

    /** Between the first save, which is taken, and the second one, which was typed over it. */
    @Test
    void anEditBySomebodyElseBetweenTwoSavesIsNotTypedOver() {
        SignedIn brannoc = people.lead();
        UUID entry = days.logged(ada, TODAY, job, "Sand to 150", 40);
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            typedOver(phone, entry, "50m", "55m");
            phone.wire.beforeADay(() -> {
                assertThat(minutes()).as("the first one is taken").containsExactly(50);
                editedBy(brannoc, entry);
            });
            phone.signalIsBack(ada);
            assertThat(minutes()).containsExactly(70);
            phone.tab.open("/");
            phone.tab.page.waitForSelector(".queue .row[data-state=refused]");
            assertThat(phone.waiting(ada)).isEqualTo(1);
            phone.tab.press("Look at it");
            assertThat(phone.tab.text()).contains("Changed meanwhile. It now says: 1 h 10");
        }
    }

    private void typedOver(Phone phone, UUID entry, String... times) {
        for (String typed : times) {
            phone.tab
                    .page
                    .locator(".row[data-row='" + entry + "'] input[data-hours]")
                    .fill(typed);
            phone.keep(ada);
        }
    }

    private void editedBy(SignedIn other, UUID entry) {
        people.asShop(
                () -> jdbc.sql("update time_entry set minutes = 70, logged_by = ?, version = version + 1 where id = ?")
                        .params(other.personId(), entry)
                        .update());
    }

    private void refusedForItsTime(Phone phone) {
        phone.wire.cut();
        phone.type("Sand to 150", "half past nonsense");
        phone.keep(ada);
        phone.signalIsBack(ada);
        phone.tab.open("/");
        phone.tab.page.waitForSelector(".queue .row[data-state=refused]");
    }

    /** At once, and still so on a page opened afresh. */
    private void nothingWaits(Phone phone) {
        for (int times = 0; times < 2; times++) {
            phone.until(
                    "async person => (await Queue.of(person)).length === 0 && document.querySelector('.queue')?.hidden === true",
                    ada.personId().toString());
            assertThat(phone.tab.text()).doesNotContain("Not taken");
            phone.tab.open("/");
        }
    }

    private List<Integer> minutes() {
        return jdbc.sql("select minutes from time_entry order by id")
                .query(Integer.class)
                .list();
    }
}
