package org.tallywright.calibration.web;

import java.util.ArrayList;
import java.util.List;
import org.tallywright.calibration.ConditionBook;

/**
 * A site condition on the rate book's page.
 *
 * @param effect what it makes of the hours, or that it is off
 * @param note the range, or what is missing
 */
record ConditionRow(String name, int tasks, int jobs, boolean counts, String effect, String note) {

    static ConditionRow of(ConditionBook.Condition said) {
        return said.counts()
                ? row(
                        said,
                        RateWords.longer(said.typical()),
                        RateWords.longer(said.low()) + " to " + RateWords.longer(said.high()))
                : row(said, "off until the shop has data", missing(said.missing()));
    }

    private static ConditionRow row(ConditionBook.Condition said, String effect, String note) {
        return new ConditionRow(said.condition().label(), said.tasks(), said.jobs(), said.counts(), effect, note);
    }

    private static String missing(ConditionBook.Missing missing) {
        List<String> parts = new ArrayList<>();
        part(parts, missing.tasks(), missing.jobs(), "with it");
        part(parts, missing.otherTasks(), missing.otherJobs(), "without it");
        return "still missing " + String.join(", and ", parts);
    }

    private static void part(List<String> parts, int tasks, int jobs, String side) {
        if (tasks == 0 && jobs == 0) {
            return;
        }
        String each = tasks == 0 ? "" : count(tasks, "finished task");
        String on = jobs == 0 ? "" : count(jobs, "more job");
        parts.add(each + (each.isEmpty() || on.isEmpty() ? "" : " on ") + on + " " + side);
    }

    private static String count(int count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }
}
