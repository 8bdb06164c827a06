package org.tallywright.calibration;

import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The columns a file of past work may have. */
public enum PastColumn {
    JOB("job", true, Set.of("job", "jobnumber", "jobname", "project", "projectname")),
    KIND("kind", true, Set.of("kind", "taskkind", "task", "work", "operation", "activity")),
    QUANTITY("quantity", false, Set.of("quantity", "qty", "amount", "units", "count")),
    ESTIMATED(
            "estimated",
            false,
            Set.of("estimated", "estimatedhours", "estimate", "esthours", "est", "planned", "plannedhours")),
    ACTUAL(
            "actual",
            true,
            Set.of("actual", "actualhours", "acthours", "hours", "act", "took", "logged", "loggedhours")),
    STARTED("started", false, Set.of("started", "startdate", "start", "startedon", "from")),
    DONE(
            "done",
            true,
            Set.of("done", "donedate", "doneon", "date", "finished", "finish", "enddate", "end", "completed")),
    PERSON("person", false, Set.of("person", "worker", "who", "name", "employee", "by"));

    private final String key;
    private final boolean needed;
    private final Set<String> headings;

    PastColumn(String key, boolean needed, Set<String> headings) {
        this.key = key;
        this.needed = needed;
        this.headings = headings;
    }

    public String key() {
        return key;
    }

    public boolean needed() {
        return needed;
    }

    /** The column of the file that is most likely meant, -1 for none. */
    int guess(List<String> names) {
        for (int i = 0; i < names.size(); i++) {
            if (headings.contains(names.get(i).toLowerCase(Locale.ROOT).replaceAll("[^a-z]", ""))) {
                return i;
            }
        }
        return -1;
    }
}
