package org.tallywright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.calibration.SamplePast;
import org.tallywright.people.Crew;
import org.tallywright.setup.SetupCode;
import org.tallywright.shared.Ids;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/**
 * Every page of the demo shop, for every role: axe finds nothing on a laptop and on a phone, the colours hold in the
 * dark, nothing scrolls sideways at 320 px and the console is quiet. Then what a phone pays for its first view, the client's page
 * without a session, and a day saved without script.
 */
@AppTest
class AxeBrowserTest {
    private static final Pattern UNREAD_KEY = Pattern.compile("\\?\\?\\w|\\b(web\\.place|\\w+\\.tab)\\.\\w");
    private static final String PASSWORD = "plumb level square";

    @LocalServerPort
    private int port;

    @Autowired
    private SetupCode codes;

    @Autowired
    private JdbcClient jdbc;

    @Autowired
    private Crew crew;

    @Autowired
    private SamplePast past;

    @Test
    void everyPageOfTheDemoShopIsAccessible() {
        List<String> wrong = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        try (Tab owner = new Tab(Chrome.somebody(Chrome.LAPTOP), home())) {
            openDemo(owner, wrong);
            past.calibrated();
            walk(owner, "owner", seen, wrong);
            refusals(owner, wrong);
            wrong.addAll(owner.complaints);
        }
        lead();
        for (Map.Entry<String, String> other : Map.of("lead", "brannoc", "helper", "jonas", "bookkeeper", "mirel")
                .entrySet()) {
            try (Tab tab = new Tab(Chrome.somebody(Chrome.LAPTOP), home())) {
                tab.open("/sign-in");
                tab.fill("signInName", other.getValue())
                        .fill("password", PASSWORD)
                        .press("Sign in");
                walk(tab, other.getKey(), seen, wrong);
                wrong.addAll(tab.complaints);
            }
        }
        assertThat(wrong).isEmpty();
    }

    /** Every page of a role is opened; one that is built as another was is not put under the engine again. */
    private void walk(Tab tab, String role, Set<String> seen, List<String> wrong) {
        DemoRoutes routes = new DemoRoutes(jdbc, role);
        int opened = 0;
        int looked = 0;
        for (Map.Entry<String, String> route : routes.all().entrySet()) {
            String name = role + " " + route.getKey();
            int status = tab.open(route.getValue());
            if (status != 200) {
                wrong.add(name + " answered " + status);
            }
            opened++;
            String words = tab.page.locator("body").innerText();
            if (UNREAD_KEY.matcher(words).find()) {
                wrong.add(name + " shows the key of a word");
            }
            // The first page of a role also shows its frame, with its own navigation.
            if (seen.add(Looked.build(tab.page)) || opened == 1) {
                looked++;
                wrong.addAll(Looked.over(tab.page, name));
            } else {
                wrong.addAll(Looked.sideways(tab.page, name));
            }
        }
        System.out.println("Pages of the " + role + ": " + opened + " opened, " + looked + " of a build of their own");
        assertThat(routes.empty)
                .as("pages of which the demo shop has nothing to show")
                .isEmpty();
        assertThat(opened).isGreaterThan(2);
    }

    /** The demo's cast has none. */
    private void lead() {
        SignedIn ada = jdbc.sql("select id, name from person where role = 'owner' limit 1")
                .query((row, n) -> new SignedIn(row.getObject("id", UUID.class), row.getString("name"), Role.OWNER))
                .single();
        UUID id = Ids.next();
        crew.takeIn(id, "Brannoc Tull", Role.LEAD, ada);
        crew.accept(crew.invite(id, ada), "brannoc", PASSWORD);
    }

    /** So that a quiet engine is not taken for a clean page. */
    @Test
    void theEngineFindsWhatIsWrong() {
        try (BrowserContext context = Chrome.somebody(Chrome.PHONE)) {
            Page page = context.newPage();
            page.setContent("<html><body><img src='x'><p style='color:#aaa;background:#fff'>pale</p>"
                    + "<div style='width:900px'>wide</div></body></html>");
            assertThat(Looked.over(page, "bad"))
                    .anyMatch(line -> line.startsWith("bad at 390: image-alt"))
                    .anyMatch(line -> line.startsWith("bad in the dark at 1280: color-contrast"))
                    .anyMatch(line -> line.startsWith("bad in the dark at 390: color-contrast"))
                    .anyMatch(line -> line.contains("scrolls sideways"));
        }
    }

    @Test
    void pagesWithoutSignInAreAccessible() {
        List<String> wrong = new ArrayList<>();
        try (Tab owner = new Tab(Chrome.somebody(Chrome.LAPTOP), home());
                Tab client = new Tab(Chrome.somebody(Chrome.PHONE), home())) {
            openDemo(owner, wrong);
            String link = clientLink(owner);
            look(client, link, 200, wrong);
            for (Locator paper : client.page.locator("main a[href*='/bids/']").all().stream()
                    .limit(1)
                    .toList()) {
                look(client, paper.evaluate("a => a.href").toString(), 200, wrong);
            }
            assertThat(client.page.context().cookies().stream().map(cookie -> cookie.name))
                    .as("the client's link keeps no session")
                    .doesNotContain("tallywright");
            look(client, link + "x", 404, wrong);
            look(client, invitation(owner), 200, wrong);
            look(client, "/sign-in", 200, wrong);
            client.fill("signInName", "ada").fill("password", "not this one").press("Sign in");
            wrong.addAll(Looked.over(client.page, "refused sign-in"));
            refusedToAHelper(client, wrong);
            wrong.addAll(client.complaints);
        }
        assertThat(wrong).isEmpty();
    }

    private void refusedToAHelper(Tab phone, List<String> wrong) {
        phone.fill("signInName", "jonas").fill("password", PASSWORD).press("Sign in");
        assertThat(phone.path()).isEqualTo("/");
        look(phone, "/shop", 403, wrong);
    }

    private void refusals(Tab owner, List<String> wrong) {
        look(owner, "/jobs/99-999", 404, wrong);
        look(owner, "/no-such-page", 404, wrong);
        owner.open("/clients/new");
        owner.press("Save");
        wrong.addAll(Looked.over(owner.page, "refused client"));
        owner.open("/");
        owner.page.locator("main input[data-hours]").first().fill("half past nonsense");
        owner.press("Save the day");
        assertThat(owner.text()).contains("Not saved yet");
        wrong.addAll(Looked.over(owner.page, "refused day"));
        stale(owner, wrong);
    }

    /** Two edits of one client: the second is shown both versions. */
    private void stale(Tab owner, List<String> wrong) {
        String edit = "/clients/"
                + jdbc.sql("select id::text from client order by id limit 1")
                        .query(String.class)
                        .single() + "/edit";
        owner.open(edit);
        owner.page.evaluate("""
                async () => {
                  const form = document.querySelector('main form.form'), data = new URLSearchParams(new FormData(form));
                  data.set('name', 'Saved from another device');
                  await fetch(form.action, {method: 'POST', body: data});
                }""");
        owner.fill("name", "Saved later").press("Save");
        assertThat(owner.page.locator("body").innerText()).contains("Saved from another device", "Saved later");
        wrong.addAll(Looked.over(owner.page, "two versions"));
    }

    private static void look(Tab tab, String path, int status, List<String> wrong) {
        int answered = tab.open(path);
        if (answered != status) {
            wrong.add(path + " answered " + answered + " instead of " + status);
        }
        wrong.addAll(Looked.over(tab.page, path.replaceAll("[0-9a-zA-Z_-]{30,}", "*")));
    }

    /** In a browser that has nothing of the shop yet but the sign-in. */
    @Test
    void firstViewOnAPhoneIsSmall() {
        BrowserContext before = Chrome.somebody(Chrome.PHONE);
        try (Tab owner = new Tab(before, home())) {
            openDemo(owner, new ArrayList<>());
            try (Tab cold = new Tab(Chrome.afresh(Chrome.PHONE, before), home())) {
                CDPSession protocol = cold.page.context().newCDPSession(cold.page);
                AtomicLong bytes = new AtomicLong();
                protocol.send("Network.enable");
                protocol.on(
                        "Network.loadingFinished",
                        event -> bytes.addAndGet(event.get("encodedDataLength").getAsLong()));
                cold.open("/");
                cold.page.waitForLoadState(com.microsoft.playwright.options.LoadState.NETWORKIDLE);
                System.out.println("First view of Today on a phone: " + bytes.get() + " bytes");
                // Less would mean that a part came from somewhere else.
                assertThat(bytes.get()).isBetween(30_000L, 60_000L);
            }
        }
    }

    @Test
    void aDayIsSavedWithoutScript() {
        try (Tab owner = new Tab(Chrome.withoutScript(Chrome.PHONE), home())) {
            openDemo(owner, new ArrayList<>());
            owner.open("/");
            Locator box = owner.page
                    .locator("main .row:not([data-state]) input[data-hours]")
                    .first();
            box.fill("1h15");
            owner.press("Save the day");
            assertThat(owner.said()).contains("Saved. The day comes to");
        }
    }

    private void openDemo(Tab owner, List<String> wrong) {
        owner.open("/");
        assertThat(owner.path()).isEqualTo("/setup");
        if (!wrong.isEmpty() || owner.page.viewportSize().width == Chrome.LAPTOP) {
            wrong.addAll(Looked.over(owner.page, "/setup"));
        }
        owner.fill("code", codes.next().orElseThrow()).press("Open the demo shop");
        assertThat(owner.path()).isEqualTo("/shop/demo");
    }

    private String clientLink(Tab owner) {
        owner.open("/jobs/" + running() + "/sharing");
        owner.press("Make a link");
        return owner.page.locator("main input[readonly]").inputValue();
    }

    private static String invitation(Tab owner) {
        owner.open("/crew");
        owner.follow("Jonas Pell");
        owner.press("Make a one-time link");
        return owner.page.locator("main input[readonly]").inputValue();
    }

    private String running() {
        return jdbc.sql("select number from job where state = 'running' order by number limit 1")
                .query(String.class)
                .single();
    }

    private String home() {
        return "http://127.0.0.1:" + port;
    }
}
