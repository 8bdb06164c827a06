package org.tallywright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import org.tallywright.setup.SetupCode;

/** What every journey on an empty shop begins with: the shop, its owner's pay, a client's job and its pieces, a link for the client. */
final class FirstSteps {
    static final String PASSWORD = "plumb level square";

    private FirstSteps() {}

    static void openTheShop(Tab owner, SetupCode codes) {
        owner.open("/");
        assertThat(owner.path()).isEqualTo("/setup");
        owner.fill("code", codes.next().orElseThrow())
                .fill("name", "Wren Aldous")
                .fill("signInName", "wren")
                .fill("password", PASSWORD)
                .fill("shopName", "Aldous Joinery");
        owner.box("timeZone").selectOption("America/New_York");
        owner.press("Open the shop");
        assertThat(owner.path()).isEqualTo("/");
        owner.open("/crew");
        owner.follow("Wren Aldous");
        pay(owner, "38", "21");
    }

    static void pay(Tab owner, String wage, String burden) {
        owner.fill("from", "2026-01-01")
                .fill("wage", wage)
                .fill("burden", burden)
                .press("Save pay");
        assertThat(owner.text()).contains(wage + ".00");
    }

    static String openAJob(Tab owner, String title) {
        owner.open("/clients/new");
        owner.fill("name", "Orla Penhallow").fill("phone", "555-0142").press("Save");
        owner.follow("Add the first site");
        owner.fill("address", "7 Harbour Row")
                .fill("drive", "25")
                .tick("outOfSquare")
                .press("Save");
        owner.open("/jobs");
        owner.follow("Open the first job");
        Locator sites = owner.box("site");
        sites.selectOption(sites.locator("option", new Locator.LocatorOptions().setHasText("Harbour Row"))
                .first()
                .getAttribute("value"));
        owner.fill("title", title).press("Open a job");
        assertThat(owner.path()).startsWith("/jobs/26-");
        return owner.path();
    }

    static void addPiece(Tab owner, String name, String kind, String width, String height, String depth) {
        owner.follow("Add a piece");
        owner.fill("name", name).choose("kind", kind);
        owner.fill("width", width).fill("height", height).fill("depth", depth);
        owner.press("Save and see its tasks");
        assertThat(owner.path()).endsWith("/proposals");
    }

    static String share(Tab owner, String job) {
        owner.open(job + "/sharing");
        owner.fill("label", "Orla").press("Make a link");
        return owner.page.locator("main input[readonly]").inputValue();
    }
}
