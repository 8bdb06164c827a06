package org.tallywright.takeoff;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/** What the formulas of a piece give beside what somebody changed or left out by hand. */
final class ByFormulas {
    private ByFormulas() {}

    /** The formulas' own parts by their rule, without those whose part was changed by hand and those left out. */
    static Map<String, PartDetails> wanted(Worked worked, Predicate<String> changed, Set<String> leftOut) {
        Map<String, PartDetails> wanted = new LinkedHashMap<>();
        worked.byRule().forEach((rule, part) -> {
            if (!changed.test(rule) && !leftOut.contains(rule)) {
                wanted.put(rule, part);
            }
        });
        return wanted;
    }

    /**
     * Whether parts that were taken off are no longer what the formulas come to: a size, a setting or a formula has changed
     * since. What was changed or left out by hand does not count.
     */
    static boolean isStale(List<PartRows.Row> parts, Worked worked, Set<String> leftOut) {
        Map<String, PartRows.Row> kept = new HashMap<>();
        parts.stream().filter(row -> !row.rule().isEmpty()).forEach(row -> kept.put(row.rule(), row));
        if (kept.isEmpty()) {
            return false;
        }
        Map<String, PartDetails> own = new HashMap<>();
        kept.forEach((rule, row) -> {
            if (!row.byHand()) {
                own.put(rule, row.details());
            }
        });
        return !own.equals(
                wanted(worked, rule -> kept.containsKey(rule) && kept.get(rule).byHand(), leftOut));
    }
}
