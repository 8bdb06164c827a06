package org.tallywright.browser;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/**
 * One Chromium for all browser tests of this JVM, the installed one: {@code -Dbrowser=/path}, else /usr/bin/chromium.
 * Nothing is downloaded.
 */
final class Chrome {
    static final int PHONE = 390;
    static final int LAPTOP = 1280;

    private Chrome() {}

    private static final class Holder {
        static final Browser BROWSER = launch();

        private static Browser launch() {
            Playwright playwright = Playwright.create(
                    new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
            Runtime.getRuntime().addShutdownHook(new Thread(playwright::close));
            return playwright
                    .chromium()
                    .launch(new BrowserType.LaunchOptions()
                            .setExecutablePath(Path.of(System.getProperty("browser", "/usr/bin/chromium")))
                            .setHeadless(true)
                            // Chromium refuses its sandbox to root, who runs in containers.
                            .setChromiumSandbox(!"root".equals(System.getProperty("user.name")))
                            .setArgs(List.of(
                                    "--disable-gpu",
                                    "--disable-quic",
                                    "--no-first-run",
                                    "--disable-background-networking",
                                    "--disable-component-update",
                                    "--disable-sync")));
        }
    }

    /** Somebody's browser, with cookies of its own. */
    static BrowserContext somebody(int width) {
        return context(options(width));
    }

    /** Somebody who comes from another place and has not set the clock. */
    static BrowserContext somebody(int width, String zone) {
        return context(options(width).setTimezoneId(zone));
    }

    /** The same signed-in person with nothing in the cache. */
    static BrowserContext afresh(int width, BrowserContext before) {
        return context(options(width).setStorageState(before.storageState()));
    }

    static BrowserContext withoutScript(int width) {
        return context(options(width).setJavaScriptEnabled(false));
    }

    /** Twice the pixels, as a picture for a page needs them. */
    static BrowserContext sharp(int width) {
        return context(options(width).setDeviceScaleFactor(2));
    }

    private static Browser.NewContextOptions options(int width) {
        return new Browser.NewContextOptions()
                .setViewportSize(width, width < 600 ? 844 : 900)
                .setHasTouch(width < 600)
                .setLocale("en-US")
                .setColorScheme(ColorScheme.LIGHT);
    }

    private static BrowserContext context(Browser.NewContextOptions options) {
        BrowserContext context = Holder.BROWSER.newContext(options);
        context.setDefaultTimeout(20_000);
        context.setDefaultNavigationTimeout(40_000);
        return context;
    }
}
