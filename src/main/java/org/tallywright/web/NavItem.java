package org.tallywright.web;

import org.jspecify.annotations.Nullable;

/**
 * One link of a navigation or of a row of tabs.
 *
 * @param key what a page calls it, as in "jobs"
 * @param label key of its words in the messages; or the words themselves where a figure stands in them
 * @param current whether the reader is there; a page may mark it by key instead
 */
public record NavItem(String key, String label, String href, boolean current) {

    public NavItem(String key, String label, String href) {
        this(key, label, href, false);
    }

    /** Whether this item is the reader's place, marked here or named by the page. */
    public boolean marks(@Nullable String section) {
        return current || key.equals(section);
    }
}
