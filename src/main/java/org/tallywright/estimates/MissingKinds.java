package org.tallywright.estimates;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import org.tallywright.estimates.EstimateSheet.TaskRow;
import org.tallywright.shared.HourClass;

/**
 * Kinds of work that bids of this trade often leave out (common practice, no source: 10 to 20 % of the hours). Only a
 * question to the estimator; nothing is added.
 */
public final class MissingKinds {
    private MissingKinds() {}

    /** What the page says of it: "travel". */
    private record Usual(String words, Predicate<TaskRow> isIt) {}

    private static final List<Usual> USUAL = List.of(
            new Usual("travel", t -> t.hourClass() == HourClass.TRAVEL || named(t, "travel")),
            new Usual(
                    "supply runs and orders",
                    t -> t.hourClass() == HourClass.SUPPLY_RUN || named(t, "supply|pick.?up|order")),
            new Usual(
                    "set-up of machines and finishing",
                    t -> t.hourClass() == HourClass.SET_UP || named(t, "set.?up|jig|finish.?prep")),
            new Usual("protecting the site", t -> named(t, "protect|dust barrier")),
            new Usual("clean-up", t -> t.hourClass() == HourClass.CLEAN_UP || named(t, "clean.?up")),
            new Usual("touch-up", t -> named(t, "touch.?up")),
            new Usual("the punch list visit", t -> named(t, "punch")));

    public static List<String> of(EstimateSheet sheet) {
        List<String> missing = new ArrayList<>();
        if (!sheet.tasks().isEmpty()) {
            for (Usual usual : USUAL) {
                if (sheet.tasks().stream().noneMatch(usual.isIt())) {
                    missing.add(usual.words());
                }
            }
        }
        return missing;
    }

    private static boolean named(TaskRow task, String pattern) {
        Pattern words = Pattern.compile(pattern, Pattern.CASE_INSENSITIVE);
        return words.matcher(task.kindCode()).find()
                || words.matcher(task.name()).find();
    }
}
