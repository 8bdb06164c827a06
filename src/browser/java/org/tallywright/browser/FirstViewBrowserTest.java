package org.tallywright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.WaitUntilState;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.tallywright.AppTest;
import org.tallywright.setup.SetupCode;

/**
 * How long the first view of Today takes on a slow mobile line: 1.6 Mbit/s down, 750 kbit/s up, 150 ms there and back, nothing
 * in the cache. The best of three counts: the machine is shared, and what slows a single one down is not the page.
 */
@AppTest
class FirstViewBrowserTest {
    private static final int TIMES = 3;
    private static final double MOST_SECONDS = 3;
    private static final int ROUND_TRIP_MILLIS = 150;
    private static final int DOWN_BYTES = 1_600_000 / 8;
    private static final int UP_BYTES = 750_000 / 8;

    /** Seconds from the address to a box that takes hours beside a button that saves; and to the hours being heard by the script. */
    private record View(double usable, double heard) {}

    @LocalServerPort
    private int port;

    @Autowired
    private SetupCode codes;

    @Test
    void takesHoursWithinThreeSecondsOnASlowLine() {
        String home = "http://127.0.0.1:" + port;
        BrowserContext first = Chrome.somebody(Chrome.PHONE);
        try (Tab owner = new Tab(first, home)) {
            owner.open("/");
            owner.fill("code", codes.next().orElseThrow()).press("Open the demo shop");
            owner.open("/");
            View best = new View(Double.MAX_VALUE, Double.MAX_VALUE);
            for (int n = 0; n < TIMES; n++) {
                try (Tab cold = new Tab(Chrome.afresh(Chrome.PHONE, first), home)) {
                    View view = view(cold.page, home);
                    System.out.printf(
                            "First view of Today: usable in %.2f s, heard in %.2f s%n", view.usable, view.heard);
                    best = view.usable < best.usable ? view : best;
                }
            }
            System.out.printf(
                    "First view of Today at 1.6 Mbit/s and 150 ms, best of %d: usable in %.2f s%n", TIMES, best.usable);
            assertThat(best.usable).as("seconds").isLessThan(MOST_SECONDS);
        }
    }

    private static View view(Page page, String home) {
        slow(page);
        long begun = System.nanoTime();
        page.navigate(home + "/", new Page.NavigateOptions().setWaitUntil(WaitUntilState.COMMIT));
        Locator row = page.locator(".day .row:not([data-state]):has(input[data-hours])")
                .first();
        row.locator("input[data-hours]").fill("1h15");
        page.locator("main button.button[value=save]").click(new Locator.ClickOptions().setTrial(true));
        double usable = (System.nanoTime() - begun) / 1e9;
        row.locator(".heard").getByText("1 h 15").waitFor();
        return new View(usable, (System.nanoTime() - begun) / 1e9);
    }

    private static void slow(Page page) {
        CDPSession browser = page.context().newCDPSession(page);
        browser.send("Network.enable");
        JsonObject line = new JsonObject();
        line.addProperty("offline", false);
        line.addProperty("latency", ROUND_TRIP_MILLIS);
        line.addProperty("downloadThroughput", DOWN_BYTES);
        line.addProperty("uploadThroughput", UP_BYTES);
        browser.send("Network.emulateNetworkConditions", line);
    }
}
