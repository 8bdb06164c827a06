package org.tallywright.browser;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** The engine of axe-core, put into a page once and run there as often as the page changes its size or colours. */
final class Axe {
    private static final String ENGINE = engine();

    /** Every rule of WCAG 2.0 to 2.2 A and AA, and the best practices. */
    private static final String ALL = "{resultTypes: ['violations']}";

    /** What the colour scheme can change. */
    private static final String COLOURS =
            "{runOnly: ['color-contrast', 'link-in-text-block'], resultTypes: ['violations']}";

    private Axe() {}

    private static String engine() {
        try (InputStream file =
                Objects.requireNonNull(AxeBuilder.class.getResourceAsStream("/axe.min.js"), "axe.min.js")) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static List<String> findings(Page page) {
        return run(page, ALL);
    }

    static List<String> colours(Page page) {
        return run(page, COLOURS);
    }

    /** One line for each element that a rule objects to. */
    private static List<String> run(Page page, String options) {
        if (Boolean.FALSE.equals(page.evaluate("() => typeof axe !== 'undefined'"))) {
            page.evaluate(ENGINE + "; undefined");
        }
        Object lines = page.evaluate("""
                async () => {
                  const found = await axe.run(document, %s);
                  return found.violations.flatMap(rule => rule.nodes.map(node =>
                    `${rule.id} (${rule.impact}): ${node.target} ${node.html.slice(0, 160)} ${node.failureSummary.replace(/\\s+/g, ' ').slice(0, 220)}`));
                }""".formatted(options));
        return ((List<?>) lines).stream().map(String::valueOf).toList();
    }
}
