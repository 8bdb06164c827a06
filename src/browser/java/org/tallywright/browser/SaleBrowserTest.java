package org.tallywright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.math.BigDecimal;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.tallywright.AppTest;
import org.tallywright.estimates.print.Pdf;
import org.tallywright.setup.SetupCode;

/**
 * A sale through the pages alone, on an empty shop: an alcove is measured, a bookcase for it taken off, laid out on sheets and put
 * into the estimate, priced, bid, accepted by the client, and changed after that. Sizes and sums are worked by hand beside each step.
 */
@AppTest
class SaleBrowserTest {
    private static final Pattern MONEY = Pattern.compile("\\$([0-9,]+\\.[0-9]{2})");

    @LocalServerPort
    private int port;

    @Autowired
    private SetupCode codes;

    @Test
    void fromTheTapeToAChangeOrder() {
        String home = "http://127.0.0.1:" + port;
        try (Tab owner = new Tab(Chrome.somebody(Chrome.LAPTOP), home);
                Tab phone = new Tab(Chrome.somebody(Chrome.PHONE), home);
                Tab client = new Tab(Chrome.somebody(Chrome.PHONE), home)) {
            FirstSteps.openTheShop(owner, codes);
            String job = FirstSteps.openAJob(owner, "Bookcase in the alcove");
            measure(signedIn(phone), job);
            takeOff(owner, job);
            buyList(owner, job);
            BigDecimal price = price(owner, job);
            String bid = issue(owner, job);
            read(owner, bid, price);
            String link = FirstSteps.share(owner, job);
            accept(client, link, price);
            BigDecimal change = change(owner, client, job, link);
            budget(owner, job, price, change);
            assertThat(List.of(owner.complaints, phone.complaints, client.complaints))
                    .as("what the console complained of")
                    .allMatch(List::isEmpty);
        }
    }

    private static Tab signedIn(Tab phone) {
        phone.open("/sign-in");
        phone.fill("signInName", "wren").fill("password", FirstSteps.PASSWORD).press("Sign in");
        return phone;
    }

    /**
     * On the phone, in the alcove. The front is 1/2 inch wider over 14 inches of depth: 90 + atan(0.5 / 14) = 92.05 degrees if one wall
     * takes all, 90 + atan(0.25 / 14) = 91.02 if both share it; two readings each good to 1/32 leave sqrt(2) / 32 = 0.044, near 3/64,
     * which over 14 inches is 0.181 degrees; a doubt is rounded up. Air of 70 degrees and 40 % settles wood at 7.7 %: Wood Handbook, table 4-2.
     */
    private static void measure(Tab phone, String job) {
        phone.open(job + "/openings/new");
        phone.fill("place", "Alcove by the chimney")
                .fill("backFloor", "60")
                .fill("frontFloor", "60 1/2")
                .fill("depthLeft", "14")
                .fill("heightLeft", "7' 1/2")
                .press("Save");
        assertThat(phone.text())
                .contains("The front is 1/2\" wider than the back", "1/2\" \u00b1 3/64\"")
                .contains("92.05\u00b0 \u00b1 0.19\u00b0", "91.02\u00b0 \u00b1 0.10\u00b0");
        phone.open(job + "/air-readings/new");
        phone.fill("place", "Living room")
                .fill("temperature", "70")
                .fill("humidity", "40")
                .press("Save");
        assertThat(phone.text()).contains("7.7 %");
    }

    /**
     * Two cases of 29 1/4 inches, (60 - 2 x 3/4) / 2, of 3/4 stock: 27 3/4 inside. A side is 12 - 3/4 deep; top and bottom sit 1/4 deep in
     * their dadoes; a loose shelf has 1/8 of play, and (84 - 4) / 13, less the bottom, makes five of them a case.
     */
    private static void takeOff(Tab owner, String job) {
        owner.open(job);
        FirstSteps.addPiece(owner, "Bookcase", "Bookcase", "60", "84", "12");
        owner.open(owner.path().replace("/proposals", "/parts"));
        owner.press("Take off");
        assertThat(owner.said()).contains("parts are taken off");
        assertThat(row(owner, "Side")).containsPattern("\\b4\\b").contains("84\" x 11 1/4\"");
        assertThat(row(owner, "Top and bottom")).contains("28 1/4\" x 11\"");
        assertThat(row(owner, "Loose shelf")).containsPattern("\\b10\\b").contains("27 5/8\" x 10 1/4\"");
        owner.follow("Propose the tasks");
        assertThat(owner.text()).contains("counted from its parts");
        owner.press("Add the ticked tasks");
        assertThat(owner.path()).isEqualTo(job);
    }

    private static String row(Tab owner, String part) {
        return owner.page
                .locator("main tbody tr", new Page.LocatorOptions().setHasText(part))
                .first()
                .innerText();
    }

    /**
     * Of 3/4 stock, 96 x 48 less 1/4 at every edge: the four sides fill the width of one sheet, 4 x 11 1/4 and three cuts. Tops, bottoms
     * and shelves go three to a row and four rows to a sheet, which is twelve of the fourteen: a third sheet, though by area 1.8 would
     * do. All twenty parts are drawn: 4 sides, 4 tops and bottoms, 10 shelves, 2 toe kicks.
     */
    private static void buyList(Tab owner, String job) {
        owner.open(job + "/buy-list");
        assertThat(row(owner, "veneer plywood, 3/4 in")).contains("3 sheets of 96\" x 48\" to buy");
        Locator layouts =
                owner.page.locator("main section.part", new Page.LocatorOptions().setHasText("plywood, 3/4 in"));
        assertThat(layouts.last().locator("figure.layout rect.cut-part").count())
                .isEqualTo(20);
        assertThat(layouts.last().innerText()).contains("cuts in order", "Left over", "Trim every edge");
        owner.press("Put these into the estimate");
        owner.open(job + "/estimate");
        assertThat(owner.text()).contains("White oak veneer plywood, 3/4 in");
        owner.open(job + "/estimate/others/new");
        owner.fill("description", "Delivery to the site").fill("amount", "85").press("Keep");
    }

    /** Cost / (1 - margin), to the next ten dollars: the rungs of the ladder add up to the price. */
    private static BigDecimal price(Tab owner, String job) {
        owner.open(job + "/estimate/rates");
        owner.page.getByLabel("Wren Aldous").fill("100");
        owner.fill("overheadRate", "14")
                .fill("contingency", "5")
                .fill("margin", "20")
                .fill("roundingStep", "10");
        owner.press("Keep");
        BigDecimal as = price(owner);
        BigDecimal higher = whatIf(owner, "30");
        assertThat(higher).isGreaterThan(as);
        owner.press("Price it like this");
        owner.open(job + "/estimate");
        assertThat(price(owner)).isEqualTo(higher);
        return higher;
    }

    private static BigDecimal price(Tab owner) {
        return money(owner.page.locator("#price").innerText().replaceFirst("(?s).*\\nPrice\\s", ""));
    }

    private static BigDecimal whatIf(Tab owner, String margin) {
        owner.page.locator("#what-if [name=margin]").fill(margin);
        Locator tried = owner.page
                .locator("#what-if-figures tr", new Page.LocatorOptions().setHasText("Price"))
                .first()
                .locator("td")
                .nth(1);
        tried.waitFor();
        return money(tried.innerText());
    }

    private static String issue(Tab owner, String job) {
        owner.open(job + "/bids/new");
        owner.fill("title", "Bookcase in white oak")
                .fill("scope", "One bookcase in two cases, oak, oiled.")
                .fill("exclusions", "Painting of the wall")
                .fill("payments", "10 % to book\nrest when done")
                .press("Issue it");
        assertThat(owner.path()).matches("/bids/[0-9a-f-]+/sums.*");
        return owner.path().replaceAll("/sums.*", "");
    }

    /** The paper says the same as a page and as a PDF, and neither what is inside. */
    private static void read(Tab owner, String bid, BigDecimal price) {
        owner.open(bid);
        String page = owner.page.locator("body").innerText();
        APIResponse answer = owner.page.request().get(owner.page.url() + "/paper.pdf");
        Pdf pdf = new Pdf(answer.body());
        for (String paper : List.of(page, pdf.text())) {
            assertThat(paper)
                    .contains(shown(price), "One bookcase in two cases", "Painting of the wall")
                    .contains(shown(price.movePointLeft(1)), "To book, 10 %")
                    .doesNotContain("Margin", "Overhead", "38.00");
        }
        assertThat(Pdf.ink(pdf.picture(1), 0, 0, pdf.width(), 400)).isBetween(0.005, 0.2);
    }

    private static void accept(Tab client, String link, BigDecimal price) {
        client.open(link);
        assertThat(client.text()).contains(shown(price));
        client.page.getByLabel("Your name").fill("Orla Penhallow");
        client.click(client.page.locator("main button", new Page.LocatorOptions().setHasText("Accept")));
        assertThat(client.said()).contains("Your acceptance is recorded");
    }

    /** Three more shelves: hours, material and two days, as a change order that the client accepts by the same link. */
    private static BigDecimal change(Tab owner, Tab client, String job, String link) {
        owner.open(job + "/estimate/tasks/new");
        Locator kinds = owner.box("taskKind");
        kinds.selectOption(kinds.locator("option", new Locator.LocatorOptions().setHasText("Make an adjustable shelf"))
                .first()
                .getAttribute("value"));
        owner.fill("quantity", "3").press("Keep");
        owner.open(job + "/bids/new");
        assertThat(owner.page.locator("h1").innerText()).contains("Change order");
        owner.fill("title", "Three more shelves")
                .fill("scope", "Three more loose shelves.")
                .fill("payments", "")
                .fill("addedDays", "2")
                .press("Issue it");
        owner.open(owner.path().replaceAll("/sums.*", ""));
        BigDecimal change = money(owner.page.locator(".paper-price").innerText());
        client.open(link);
        assertThat(client.text()).contains(shown(change), "Three more shelves");
        client.page.getByLabel("Your name").fill("Orla Penhallow");
        client.click(client.page.locator("main button", new Page.LocatorOptions().setHasText("Accept")));
        assertThat(client.said()).contains("Your acceptance is recorded");
        return change;
    }

    /** Bid and accepted change, wherever the job's price stands. */
    private static void budget(Tab owner, String job, BigDecimal price, BigDecimal change) {
        String both = shown(price.add(change));
        owner.open(job);
        assertThat(owner.text()).contains("Bid A and a change", both);
        owner.open(job + "/review");
        assertThat(owner.text()).contains(both);
        owner.open(job + "/estimate");
        assertThat(owner.page.locator("#bids").innerText()).contains(shown(price), shown(change), "Orla Penhallow");
    }

    private static BigDecimal money(String words) {
        Matcher found = MONEY.matcher(words);
        assertThat(found.find()).as(words).isTrue();
        return new BigDecimal(found.group(1).replace(",", ""));
    }

    private static String shown(BigDecimal money) {
        return "$" + String.format(java.util.Locale.US, "%,.2f", money);
    }
}
