package org.tallywright.browser;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.util.ArrayList;
import java.util.List;

/** What is wrong with an open page at the sizes and in the colours that matter. */
final class Looked {
    private Looked() {}

    /** All rules at laptop and phone size, the colours in the dark at both, and no sideways scrolling at 320 px. */
    static List<String> over(Page page, String name) {
        List<String> wrong = new ArrayList<>();
        openDetails(page);
        resize(page, Chrome.LAPTOP, 900);
        Axe.findings(page).forEach(line -> wrong.add(name + " at 1280: " + line));
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        Axe.colours(page).forEach(line -> wrong.add(name + " in the dark at 1280: " + line));
        resize(page, Chrome.PHONE, 844);
        Axe.colours(page).forEach(line -> wrong.add(name + " in the dark at 390: " + line));
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
        Axe.findings(page).forEach(line -> wrong.add(name + " at 390: " + line));
        wrong.addAll(sideways(page, name));
        return wrong;
    }

    static List<String> sideways(Page page, String name) {
        List<String> wrong = new ArrayList<>();
        resize(page, 320, 640);
        Object wide = page.evaluate("""
                () => document.documentElement.scrollWidth <= 320 ? '' : document.documentElement.scrollWidth + ' px: '
                  + [...document.querySelectorAll('body *')].filter(e => e.getBoundingClientRect().right > 321
                      && !e.closest('.table-wrap, .vh, svg')).slice(0, 3).map(e => e.outerHTML.slice(0, 120)).join(' | ')""");
        if (!"".equals(wide)) {
            wrong.add(name + " scrolls sideways at 320, " + wide);
        }
        return wrong;
    }

    /**
     * How the page's own part is built: its elements with their classes and the names of their attributes, without words and values.
     * Two pages of the same build hold nothing that the engine could find in one only.
     */
    static String build(Page page) {
        return String.valueOf(page.evaluate("""
                () => [...document.querySelectorAll('main *')].map(e => e.tagName + '.' + (e.getAttribute('class') ?? '')
                  + [...e.attributes].map(a => a.name).filter(n => n !== 'aria-current')).join(' ')"""));
    }

    private static void resize(Page page, int width, int height) {
        page.setViewportSize(width, height);
    }

    /** What is folded away is read too. */
    private static void openDetails(Page page) {
        page.evaluate("() => document.querySelectorAll('main details:not([open])').forEach(d => d.open = true)");
    }
}
