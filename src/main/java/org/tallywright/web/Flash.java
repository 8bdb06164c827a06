package org.tallywright.web;

import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The one line a page shows after a redirect. */
public final class Flash {
    /** The model attribute that the layout reads. */
    public static final String NAME = "flash";

    private Flash() {}

    public static void done(RedirectAttributes redirect, String sentence) {
        redirect.addFlashAttribute(NAME, sentence);
    }
}
