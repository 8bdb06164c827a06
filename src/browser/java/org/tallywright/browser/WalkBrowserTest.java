package org.tallywright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.setup.SetupCode;

/**
 * The main job on an empty shop, through the pages alone: from the set-up code to the review of a closed job. The owner
 * works on a laptop and logs his day on a phone, as the helper does; the client comes by his link. It runs at the speed of the machine; the clock of
 * the shop is moved from day to day.
 */
@AppTest
class WalkBrowserTest {
    @LocalServerPort
    private int port;

    @Autowired
    private SetupCode codes;

    @Autowired
    private TestClock clock;

    @Test
    void fromAnEmptyShopToAReviewedJob() {
        String home = "http://127.0.0.1:" + port;
        try (Tab owner = new Tab(Chrome.somebody(Chrome.LAPTOP), home);
                Tab pocket = new Tab(Chrome.somebody(Chrome.PHONE), home);
                Tab helper = new Tab(Chrome.somebody(Chrome.PHONE), home);
                Tab client = new Tab(Chrome.somebody(Chrome.PHONE), home)) {
            FirstSteps.openTheShop(owner, codes);
            takeInAHelper(owner, helper);
            String job = FirstSteps.openAJob(owner, "Window seat and bookcase, north bay");
            addPieces(owner, job);
            estimate(owner, job);
            String price = issueTheBid(owner, job);
            String link = FirstSteps.share(owner, job);
            accept(client, link, price);
            logAWeek(owner, signedIn(pocket), helper, job);
            seeProgress(owner, client, job, link);
            finish(owner, job);
            review(owner, job, price);
            assertThat(List.of(owner.complaints, pocket.complaints, helper.complaints, client.complaints))
                    .as("what the console complained of")
                    .allMatch(List::isEmpty);
        }
    }

    private static void takeInAHelper(Tab owner, Tab helper) {
        owner.open("/crew");
        owner.follow("New person");
        owner.fill("name", "Tobin Marsh").choose("role", "Helper").press("Take in");
        FirstSteps.pay(owner, "22", "18");
        owner.press("Make a one-time link");
        String link = owner.page.locator("main input[readonly]").inputValue();
        helper.open(link);
        helper.fill("signInName", "tobin").fill("password", FirstSteps.PASSWORD).press("Save name and password");
        helper.fill("signInName", "tobin").fill("password", FirstSteps.PASSWORD).press("Sign in");
        assertThat(helper.path()).isEqualTo("/");
        assertThat(helper.text()).contains("Nothing is planned");
    }

    private static void addPieces(Tab owner, String job) {
        owner.follow("Write down a measure");
        owner.fill("name", "Back width at the floor").fill("length", "61 3/8").press("Save");
        assertThat(owner.text()).contains("5' 1 3/8\"");
        FirstSteps.addPiece(owner, "Window seat, north bay", "Window seat", "61 3/8", "18", "20 1/2");
        Locator quantity = owner.page
                .getByLabel("Quantity of", new com.microsoft.playwright.Page.GetByLabelOptions())
                .first();
        quantity.fill("2");
        owner.press("Add the ticked tasks");
        FirstSteps.addPiece(owner, "Bookcase, left", "Bookcase", "36", "7' 2\"", "12");
        owner.press("Add the ticked tasks");
        assertThat(owner.path()).isEqualTo(job);
        assertThat(owner.text()).contains("Window seat, north bay", "Bookcase, left", "Stages and tasks");
    }

    private static void estimate(Tab owner, String job) {
        owner.open(job + "/estimate/rates");
        owner.page.getByLabel("Wren Aldous").fill("60");
        owner.page.getByLabel("Tobin Marsh").fill("40");
        owner.fill("overheadRate", "14")
                .fill("contingency", "5")
                .fill("margin", "20")
                .fill("roundingStep", "10");
        owner.press("Keep");
        addMaterial(owner, job, "40", "0.7");
        addMaterial(owner, job, "2", "0.8");
        owner.open(job + "/estimate/others/new");
        owner.fill("description", "Delivery to the site").fill("amount", "85").press("Keep");
        assertThat(owner.path()).startsWith(job + "/estimate");
        assertThat(owner.text()).contains("Delivery to the site", "Margin", "$");
    }

    private static void addMaterial(Tab owner, String job, String net, String yield) {
        owner.open(job + "/estimate/materials/new");
        owner.box("material")
                .selectOption(new com.microsoft.playwright.options.SelectOption().setIndex(net.equals("40") ? 1 : 9));
        owner.fill("net", net).fill("yield", yield).press("Keep");
        assertThat(owner.path()).startsWith(job + "/estimate");
    }

    private static String issueTheBid(Tab owner, String job) {
        owner.open(job + "/bids/new");
        owner.fill("scope", "A window seat with drawers and a bookcase, oak, oiled.")
                .fill("terms", "A third now, a third at delivery, the rest when done.");
        owner.press("Issue it");
        assertThat(owner.path()).matches("/bids/[0-9a-f-]+/sums.*");
        owner.open(owner.path().replaceAll("/sums.*", ""));
        java.util.regex.Matcher price = java.util.regex.Pattern.compile("\\$[0-9,]+\\.[0-9]{2}")
                .matcher(owner.page.locator("body").innerText());
        assertThat(price.find()).isTrue();
        return price.group();
    }

    private static void accept(Tab client, String link, String price) {
        client.open(link);
        assertThat(client.text()).contains(price);
        client.page.getByLabel("Your name").fill("Orla Penhallow");
        client.click(client.page.locator(
                "main button", new com.microsoft.playwright.Page.LocatorOptions().setHasText("Accept")));
        assertThat(client.said()).contains("Your acceptance is recorded");
        assertThat(client.page.context().cookies().stream().map(cookie -> cookie.name))
                .doesNotContain("tallywright");
    }

    /** The owner's own phone. */
    private static Tab signedIn(Tab pocket) {
        pocket.open("/sign-in");
        pocket.fill("signInName", "wren").fill("password", FirstSteps.PASSWORD).press("Sign in");
        assertThat(pocket.path()).isEqualTo("/");
        assertThat(pocket.page.viewportSize().width).isEqualTo(Chrome.PHONE);
        return pocket;
    }

    private void logAWeek(Tab owner, Tab pocket, Tab helper, String job) {
        owner.open(job);
        assertThat(owner.text()).contains("Running");
        for (int n = 0; n < 3; n++) {
            owner.click(owner.page.locator("main form[action$='/start'] button").first());
        }
        clock.advance(Duration.ofHours(4));
        logDay(pocket, "3h", "2h30");
        logDay(helper, "2", "45m");
        buyAndTake(owner, helper, job);
        nextDay();
        logDay(pocket, "8:00-12:15", "1.5");
        rework(helper);
        String waiting = glueUp(owner, job);
        pocket.open("/");
        assertThat(pocket.text()).contains("Curing", waiting);
        nextDay();
        owner.open(job);
        assertThat(owner.text()).contains("over since");
        for (int day = 0; day < 3; day++) {
            logDay(pocket, "4h", "2h");
            logDay(helper, "4h", "1h");
            nextDay();
        }
    }

    private void nextDay() {
        clock.advance(Duration.ofDays(1));
    }

    private static void logDay(Tab tab, String first, String second) {
        tab.open("/");
        Locator boxes = tab.page.locator("main input[data-hours]");
        int open = 0;
        for (String typed : List.of(first, second)) {
            boxes.nth(open++).fill(typed);
        }
        tab.press("Save the day");
        answerQuestions(tab);
        assertThat(tab.said()).contains("Saved");
    }

    private static void answerQuestions(Tab tab) {
        for (int tries = 0; tries < 3 && !tab.said().contains("Saved. The day"); tries++) {
            tab.page.locator("main button[name=yes]").first().click();
        }
    }

    private static void rework(Tab helper) {
        helper.open("/");
        Locator row = helper.page.locator("main .sheet .row").first();
        row.locator("input[data-hours]").fill("1h");
        row.locator("summary").click();
        row.locator("select[name$='.class']").selectOption("rework");
        helper.press("Save the day");
        assertThat(helper.text()).contains("Not saved yet");
        assertThat(row.locator("input[data-hours]").inputValue()).isEqualTo("1h");
        row.locator("input[name$='.reason']").fill("Rail was cut short");
        helper.press("Save the day");
        answerQuestions(helper);
        assertThat(helper.said()).contains("Saved");
    }

    private static void buyAndTake(Tab owner, Tab helper, String job) {
        owner.open(job + "/materials");
        owner.follow("New purchase");
        owner.box("material").selectOption(new com.microsoft.playwright.options.SelectOption().setIndex(1));
        owner.fill("quantity", "60")
                .fill("price", "13.20")
                .fill("supplier", "Yard")
                .fill("receipt", "R-1107");
        owner.press("Save");
        helper.open(job + "/materials");
        helper.follow("Take material");
        helper.box("material").selectOption(new com.microsoft.playwright.options.SelectOption().setIndex(1));
        helper.fill("quantity", "58").fill("net", "41").press("Save");
        assertThat(helper.text()).contains("58").doesNotContain("13.20").doesNotContain("$");
    }

    /** @return what cures now */
    private static String glueUp(Tab owner, String job) {
        owner.open(job);
        openStages(owner);
        owner.follow("Glue up a wide panel or top");
        owner.follow("Done");
        owner.fill("doneAt", "16:10").press("Done, this is what it came to");
        assertThat(owner.text()).contains("until");
        return owner.page
                .locator("main .task-row:has(form[action*='/waits/']) span")
                .first()
                .innerText();
    }

    private static void openStages(Tab owner) {
        Locator closed = owner.page.locator("details.stage:not([open]) > summary");
        while (closed.count() > 0) {
            closed.first().click();
        }
    }

    private static void seeProgress(Tab owner, Tab client, String job, String link) {
        owner.open(job + "/sharing");
        owner.fill("text", "The cases are glued up.").tick("shown").press("Keep the note");
        owner.open(job);
        assertThat(owner.page.locator("main figure").first().innerText()).containsPattern("\\d+ h");
        for (String stage : List.of("Measure", "Bid", "Buy", "Mill")) {
            passStage(owner, stage);
        }
        client.open(link);
        String seen = client.page.locator("body").innerText();
        assertThat(seen).contains("The cases are glued up.", "Where it stands");
        assertThat(seen).doesNotContainPattern("\\d+ (h|min)\\b").doesNotContain("hours", "Rail was cut short");
        assertThat(client.page.content()).doesNotContain("Rail was cut short").doesNotContain("38.00");
    }

    private static void passStage(Tab owner, String stage) {
        for (String button : List.of("Enter " + stage, stage + " is done")) {
            Locator details = owner.page
                    .locator("details.stage", new com.microsoft.playwright.Page.LocatorOptions().setHasText(stage))
                    .first();
            if (details.getAttribute("open") == null) {
                details.locator("summary").click();
            }
            if (owner.offers(button)) {
                owner.press(button);
            }
        }
    }

    private static void finish(Tab owner, String job) {
        owner.open(job + "/punch-items/new");
        owner.fill("text", "Gap at the left scribe").press("Save");
        owner.press("Done: Gap at the left scribe");
        owner.press("Sign off: Gap at the left scribe");
        owner.open(job + "/closing");
        owner.fill("note", "With the client, all well.").press("Record it");
        owner.open(job + "/closing");
        for (Locator done :
                owner.page.locator("main input[type=radio][value=done]").all()) {
            done.check();
        }
        owner.press("Close the job");
        assertThat(owner.path()).isEqualTo(job);
        assertThat(owner.text()).contains("Closed");
    }

    private static void review(Tab owner, String job, String price) {
        owner.open(job + "/review");
        String review = owner.text();
        assertThat(review).contains(price, "Price, cost, margin", "Rework and call-backs", "Rail was cut short");
        assertThat(review).contains("Margin", "Hours by stage and task", "Material");
        openRework(owner, job);
    }

    /** From the figure of the hours to the class, from there to the entry that was logged a week before. */
    private static void openRework(Tab owner, String job) {
        Locator hours = owner.page.locator("details.figure").filter(new Locator.FilterOptions().setHasText("Hours"));
        hours.first().locator("summary").click();
        owner.click(hours.first().locator(".behind a", new Locator.LocatorOptions().setHasText("rework")));
        assertThat(owner.path()).isEqualTo(job + "/hours?class=rework");
        assertThat(owner.text()).contains("Tobin Marsh", "Rail was cut short", "1 h");
        owner.open(job + "/review");
        Locator cause = owner.page
                .locator("details.opens")
                .filter(new Locator.FilterOptions().setHasText("Rework, call-backs, standby"));
        cause.locator("summary").click();
        owner.click(cause.locator(".behind a").first());
        assertThat(owner.path()).startsWith(job + "/hours?task=");
        assertThat(owner.text()).contains("Rail was cut short");
    }
}
