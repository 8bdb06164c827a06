package org.tallywright.daylog.web;

import java.util.List;

/**
 * The morning of one person, to be read at arm's length or from one sheet of paper.
 *
 * @param cures what is not to be touched yet, those of the day's jobs first
 * @param cautions each once
 */
record MorningPage(String title, List<Job> jobs, List<Cure> cures, List<Caution> cautions, String sheetHref) {
    /** @param conditions what the site is like, in words, or empty */
    record Job(
            String number,
            String title,
            String address,
            String access,
            String conditions,
            boolean onSite,
            List<Task> tasks) {}

    /**
     * @param aside quantity and stage
     * @param sizes of its piece, or empty
     * @param why it is on the list where it is not planned for the day, or empty
     */
    record Task(String name, String href, String aside, String piece, String sizes, String why) {}

    record Cure(String name, String what, String until) {}

    record Caution(String text, String source) {}
}
