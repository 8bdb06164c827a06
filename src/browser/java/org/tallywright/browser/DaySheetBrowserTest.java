package org.tallywright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.tallywright.AppTest;
import org.tallywright.setup.SetupCode;

/** The day sheet in one hand, and the morning on one sheet of paper. */
@AppTest
class DaySheetBrowserTest {
    private static final int MOST_TAPS = 12;

    @LocalServerPort
    private int port;

    @Autowired
    private SetupCode codes;

    /** A tap is a touch on a control; digits on the keypad are not counted, the reason of the rework is picked. */
    @Test
    void anOrdinaryDayTakesFewTaps() {
        try (Tab owner = demo(Chrome.PHONE)) {
            owner.open("/");
            int taps = 0;
            Locator rows = owner.page.locator("main .row:not([data-state]):not(:has(.pick)):has(input[data-hours])");
            int other = 1;
            while (job(rows.nth(other)).equals(job(rows.nth(0)))) {
                other++;
            }
            int third = other == 1 ? 2 : 1;
            for (int row : new int[] {0, other, third}) {
                rows.nth(row).locator("input[data-hours]").click();
                owner.page.keyboard().type("1h15");
                taps++;
            }
            rows.nth(0).locator("summary").click();
            owner.page.waitForNavigation(
                    () -> rows.nth(0).getByText("Another entry on this").click());
            taps += 2;
            Locator again = owner.page
                    .locator("main .row:has(select[name$='.class'] option[value=rework][selected])")
                    .first();
            again.locator("input[data-hours]").click();
            owner.page.keyboard().type("45m");
            again.locator("input[name$='.reason']").click();
            String picked = owner.page.locator("#reasons option").first().getAttribute("value");
            again.locator("input[name$='.reason']").fill(picked);
            taps += 3;
            owner.press("Save the day");
            taps++;
            assertThat(owner.said()).contains("Saved. The day comes to");
            assertThat(taps).as("taps").isLessThanOrEqualTo(MOST_TAPS);
            System.out.println("taps of an ordinary day: " + taps);
        }
    }

    private static String job(Locator row) {
        return row.locator("label small").first().innerText().split(" ")[0];
    }

    @Test
    void anOrdinaryDayIsOneLine() {
        try (Tab owner = demo(Chrome.PHONE)) {
            owner.open("/");
            Locator names = owner.page.locator("main .row:not([data-state]):not(:has(.pick)) > label");
            String one = words(names.nth(0));
            String other = words(names.nth(1));
            owner.fill("line", one + " 2h30, " + other + " 1,5h, 45m rework " + one);
            owner.press("Put into rows");
            assertThat(owner.text()).contains("From your line").doesNotContain("Saved.");
        }
    }

    private static String words(Locator label) {
        return label.innerText().lines().findFirst().orElse("").replace(",", " ");
    }

    @Test
    void theMorningPrintsOnOnePage() {
        try (Tab owner = demo(Chrome.PHONE)) {
            owner.open("/morning");
            byte[] pdf = owner.page.pdf(new Page.PdfOptions().setFormat("Letter"));
            long pages = Pattern.compile("/Type\\s*/Page[^s]")
                    .matcher(new String(pdf, StandardCharsets.ISO_8859_1))
                    .results()
                    .count();
            assertThat(pages).isEqualTo(1);
            double size = ((Number) owner.page.evaluate(
                            "parseFloat(getComputedStyle(document.querySelector('.morning')).fontSize)"))
                    .doubleValue();
            assertThat(size).isGreaterThanOrEqualTo(20);
        }
    }

    private Tab demo(int width) {
        Tab owner = new Tab(Chrome.somebody(width), "http://127.0.0.1:" + port);
        owner.open("/");
        owner.fill("code", codes.next().orElseThrow()).press("Open the demo shop");
        return owner;
    }
}
