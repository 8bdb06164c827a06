package org.tallywright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.PlaywrightException;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.SelectOption;
import java.util.ArrayList;
import java.util.List;

/** A page as a person uses it: boxes by their names, buttons and links by their words. Collects what the console complains of. */
final class Tab implements AutoCloseable {
    final Page page;
    final List<String> complaints = new ArrayList<>();
    private final String home;
    private final BrowserContext context;

    Tab(BrowserContext context, String home) {
        this.context = context;
        this.home = home;
        this.page = context.newPage();
        page.onConsoleMessage(message -> {
            // A refused form is an answer too; Chromium notes its status as an error of loading.
            if (message.type().equals("error")
                    && !message.text().startsWith("Failed to load resource: the server responded")) {
                complaints.add(page.url() + ": " + message.text());
            }
        });
        page.onPageError(error -> complaints.add(page.url() + ": " + error));
    }

    /**
     * Goes to an address, again where the page was just leaving by itself (after what waited on it was sent), as a person would.
     *
     * @return the status of the answer
     */
    int open(String path) {
        String address = path.startsWith("http") ? path : home + path;
        for (int left = 2; ; left--) {
            try {
                Response answer = page.navigate(address);
                if (answer != null) {
                    return answer.status();
                }
                assertThat(left).as("no answer of its own from " + path).isPositive();
            } catch (PlaywrightException crossed) {
                if (left == 0 || !crossedByThePageItself(crossed.getMessage())) {
                    throw crossed;
                }
                page.waitForLoadState(); // of the page that came in between
            }
        }
    }

    private static boolean crossedByThePageItself(String message) {
        return message.contains("ERR_ABORTED") || message.contains("interrupted by another navigation");
    }

    Tab fill(String name, String typed) {
        box(name).fill(typed);
        return this;
    }

    Tab choose(String name, String label) {
        box(name).selectOption(new SelectOption().setLabel(label));
        return this;
    }

    Tab tick(String name) {
        page.locator("main input[type=checkbox][name='" + name + "']").check();
        return this;
    }

    Locator box(String name) {
        return page.locator("main [name='" + name + "']:not([type=hidden])").first();
    }

    void press(String words) {
        click(page.locator("main").getByRole(AriaRole.BUTTON, exactly(words)).first());
    }

    void follow(String words) {
        click(page.locator("main")
                .getByRole(
                        AriaRole.LINK,
                        new Locator.GetByRoleOptions().setName(words).setExact(true))
                .first());
    }

    boolean offers(String button) {
        return page.locator("main").getByRole(AriaRole.BUTTON, exactly(button)).count() > 0;
    }

    private static Locator.GetByRoleOptions exactly(String words) {
        return new Locator.GetByRoleOptions().setName(words).setExact(true);
    }

    /** Waits for the answer of what is clicked, which on every page is another page. */
    void click(Locator what) {
        page.waitForNavigation(what::click);
    }

    String text() {
        return page.locator("main").innerText();
    }

    String said() {
        Locator flash = page.locator(".flash");
        return flash.count() == 0 ? "" : flash.first().innerText();
    }

    String path() {
        return page.url().substring(home.length());
    }

    @Override
    public void close() {
        context.close();
    }
}
