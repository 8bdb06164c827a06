package org.tallywright.browser;

import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.Map;

/**
 * Takes the pictures of the README from a demo shop that runs already: its address as the first argument, the directory
 * for the pictures as the second.
 */
public final class Pictures {
    private static final String PASSWORD = "plumb level square";

    private final Path directory;

    private Pictures(Path directory) {
        this.directory = directory;
    }

    public static void main(String[] args) {
        all(
                args.length > 0 ? args[0] : "http://127.0.0.1:8080",
                Path.of(args.length > 1 ? args[1] : "src/docs/images"));
        System.exit(0);
    }

    static void all(String home, Path directory) {
        Pictures pictures = new Pictures(directory);
        try (Tab laptop = new Tab(Chrome.somebody(1100), home);
                Tab phone = new Tab(Chrome.somebody(Chrome.PHONE), home)) {
            signIn(laptop, "ada");
            String running = job(laptop, "/jobs");
            String closed = job(laptop, "/jobs?state=closed");
            Map.of("job", running, "estimate", running + "/estimate", "review", closed + "/review")
                    .forEach((name, path) -> pictures.take(laptop, path, name, 700));
            laptop.open(running + "/sharing");
            laptop.press("Make a link");
            String link = laptop.page.locator("main input[readonly]").inputValue();
            pictures.take(phone, link, "client", 844);
            signIn(phone, "ada");
            pictures.take(phone, "/", "today-phone", 844);
        }
    }

    private static void signIn(Tab tab, String name) {
        tab.open("/sign-in");
        tab.fill("signInName", name).fill("password", PASSWORD).press("Sign in");
    }

    private static String job(Tab tab, String list) {
        tab.open(list);
        return tab.page.locator("main th a[href^='/jobs/']").first().getAttribute("href");
    }

    private void take(Tab tab, String path, String name, int height) {
        tab.open(path);
        tab.page.setViewportSize(tab.page.viewportSize().width, height);
        tab.page.screenshot(new Page.ScreenshotOptions().setPath(directory.resolve(name + ".png")));
    }
}
