package org.tallywright.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tallywright.daylog.SampleDays.TODAY;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.AriaRole;
import java.util.List;
import java.util.UUID;
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

/** What waits on the phone and is changed, thrown away, typed in two windows or left behind on the way out. */
@AppTest
class WaitingBrowserTest {
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
    private SampleDays.SampleJob job;

    @BeforeEach
    void aShop() {
        ada = people.owner();
        Phone.mayEnter(people, jdbc, encoder, ada);
        job = days.job("Window seat, north bay", "Rip hardwood", "Sand to 150");
    }

    @Test
    void aNewEntryThatWaitsIsChanged() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            phone.type("Sand to 150", "40m");
            phone.keep(ada);
            takenBack(phone);
            Locator box = Phone.blankRow(phone.tab, "Sand to 150").locator("input[data-hours]");
            assertThat(box.inputValue()).isEqualTo("40m");
            phone.tab.open("/");
            assertThat(box.inputValue()).as("a draft from now on").isEqualTo("40m");
            box.fill("45m");
            phone.keep(ada);
            phone.signalIsBack(ada);
            assertThat(minutes()).containsExactly(45);
        }
    }

    @Test
    void anEditThatWaitsIsChanged() {
        UUID entry = days.logged(ada, TODAY, job, "Sand to 150", 40);
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            Locator row = edited(phone, entry, "50m");
            takenBack(phone);
            assertThat(row.getAttribute("data-state")).isEqualTo("saved");
            assertThat(row.innerText()).contains("Saved").doesNotContain("Waits for a signal");
            assertThat(row.locator("input[data-hours]").inputValue()).isEqualTo("50m");
            row.locator("input[data-hours]").fill("55m");
            phone.keep(ada);
            assertThat(row.innerText()).contains("Waits for a signal");
            phone.signalIsBack(ada);
            assertThat(minutes()).containsExactly(55);
        }
    }

    @Test
    void anEditThatIsThrownAwayLeavesTheRowAsItIsStored() {
        UUID entry = days.logged(ada, TODAY, job, "Sand to 150", 40);
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            Locator row = edited(phone, entry, "50m");
            button(phone, "Throw it away").click();
            assertThat(phone.waiting(ada)).as("asked once").isEqualTo(1);
            button(phone, "Throw it away for good").click();
            phone.tab.page.waitForCondition(() -> "saved".equals(row.getAttribute("data-state")));
            assertThat(row.locator("input[data-hours]").inputValue()).isEqualTo("40 min");
            assertThat(row.innerText()).doesNotContain("Waits for a signal");
            phone.signalIsBack(ada);
            assertThat(minutes()).containsExactly(40);
        }
    }

    /** The draft carries the entry's id into the second window; what both then save are two entries. */
    @Test
    void theSameDraftInTwoWindowsBecomesTwoEntries() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            phone.tab.open("/");
            phone.type("Sand to 150", "40m");
            Tab second = phone.second();
            second.open("/");
            Locator box = Phone.blankRow(second, "Sand to 150").locator("input[data-hours]");
            assertThat(box.inputValue()).isEqualTo("40m");
            phone.keep(ada);
            // The other window hears of it: the same words are not typed twice.
            second.page.waitForCondition(() -> box.inputValue().isEmpty());
            Phone.type(second, "Sand to 150", "20m");
            phone.keep(second, ada);
            assertThat(phone.waiting(ada)).isEqualTo(2);
            second.page.close();
            phone.signalIsBack(ada);
            bothAreSaved(phone);
        }
    }

    @Test
    void theSameDraftChangedInTwoWindowsIsNeitherLostNorCrossed() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            phone.tab.open("/");
            phone.type("Sand to 150", "40m");
            Tab second = phone.second();
            second.open("/");
            Phone.type(second, "Sand to 150", "20m");
            phone.keep(ada);
            second.page.waitForSelector(".queue .row[data-state=queued]");
            phone.keep(second, ada);
            assertThat(ids(phone)).hasSize(2).doesNotHaveDuplicates();
            second.page.close();
            phone.signalIsBack(ada);
            bothAreSaved(phone);
        }
    }

    /** A browser may show the very page again that had just been left for another. */
    @Test
    void aPageThatComesBackTakesTyping() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.tab.page.evaluate("""
                    () => {
                      window.same = true;
                      const form = document.querySelector('form.day');
                      form.dataset.plain = 'plain';
                      dispatchEvent(new PageTransitionEvent('pagehide', { persisted: true }));
                      dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true }));
                    }""");
            phone.wire.cut();
            phone.type("Sand to 150", "25m");
            phone.keep(ada);
            assertThat(phone.tab.page.evaluate("() => window.same")).isEqualTo(true);
            phone.signalIsBack(ada);
            assertThat(minutes()).containsExactly(25);
        }
    }

    @Test
    void theWayOutWithTheLineCutEndsNothing() {
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            phone.wire.cut();
            phone.tab.click(phone.tab.page.locator("form[action='/sign-out'] button"));
            assertThat(phone.tab.text()).contains("This page needs a signal");
            phone.tab.open("/");
            phone.type("Sand to 150", "25m");
            phone.keep(ada);
            phone.signalIsBack(ada);
            phone.tab.open("/");
            assertThat(phone.tab.path()).as("still signed in").isEqualTo("/");
            assertThat(minutes()).containsExactly(25);

            phone.tab.click(phone.tab.page.locator("form[action='/sign-out'] button"));
            phone.wire.cut();
            phone.tab.open("/");
            assertThat(phone.tab.page.content())
                    .as("out, and no copy left")
                    .contains("This page needs a signal")
                    .doesNotContain("Ada Fenn");
        }
    }

    /** The second entry on one task of one day is asked about, from whatever window. */
    private void bothAreSaved(Phone phone) {
        assertThat(minutes()).containsExactly(40);
        phone.tab.open("/");
        phone.tab.page.waitForSelector(".queue .row[data-state=refused]");
        phone.tab.press("Look at it");
        assertThat(phone.tab.text()).contains("Add 20 min to it?");
        phone.tab.press("It is right");
        assertThat(phone.tab.said()).contains("Saved. The day comes to 1 h");
        assertThat(minutes()).containsExactlyInAnyOrder(40, 20);
        assertThat(phone.waiting(ada)).isZero();
    }

    private Locator edited(Phone phone, UUID entry, String typed) {
        phone.wire.cut();
        Locator row = phone.tab.page.locator(".day > .sheet > .row[data-row='" + entry + "']");
        row.locator("input[data-hours]").fill(typed);
        phone.keep(ada);
        assertThat(row.innerText()).contains("Waits for a signal");
        return row;
    }

    /** The queue first lets go of it, then the sheet shows it no longer. */
    private void takenBack(Phone phone) {
        button(phone, "Change").click();
        phone.tab.page.waitForCondition(() -> phone.tab.page.locator(".queue").isHidden());
        assertThat(phone.waiting(ada)).isZero();
    }

    private static Locator button(Phone phone, String words) {
        return phone.tab
                .page
                .locator(".queue")
                .getByRole(
                        AriaRole.BUTTON,
                        new Locator.GetByRoleOptions().setName(words).setExact(true));
    }

    private List<Object> ids(Phone phone) {
        return phone.queue(ada).stream()
                .flatMap(item -> ((List<?>) item.get("rows")).stream())
                .map(row -> ((java.util.Map<?, ?>) row).get("id"))
                .map(Object.class::cast)
                .toList();
    }

    private List<Integer> minutes() {
        return jdbc.sql("select minutes from time_entry order by id")
                .query(Integer.class)
                .list();
    }
}
