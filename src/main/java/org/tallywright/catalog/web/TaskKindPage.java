package org.tallywright.catalog.web;

import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.tallywright.catalog.KindWait;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.catalog.WaitTime;
import org.tallywright.shared.ShopClock;

/**
 * One task kind with what comes before and after it, and what it counts as one with.
 *
 * @param as the kind that this one is counted as, null for a kind of its own
 * @param merged the kinds that are counted as this one
 * @param choices the kinds that it could be counted as: in use, of the same unit
 */
record TaskKindPage(
        TaskKindCard kind,
        List<TaskKindCard> before,
        List<TaskKindCard> after,
        @Nullable TaskKindCard as,
        List<Merged> merged,
        Map<String, String> choices) {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    record Merged(TaskKindCard kind, String on) {}

    static TaskKindPage of(TaskKindCard kind, List<TaskKindCard> all, ShopClock clock) {
        return new TaskKindPage(
                kind,
                all.stream().filter(other -> kind.before().contains(other.id())).toList(),
                all.stream().filter(other -> other.before().contains(kind.id())).toList(),
                all.stream().filter(other -> isInto(kind, other)).findFirst().orElse(null),
                all.stream()
                        .filter(other -> isInto(other, kind))
                        .map(other -> new Merged(other, on(other, clock)))
                        .toList(),
                choices(kind, all));
    }

    private static boolean isInto(TaskKindCard kind, TaskKindCard other) {
        return kind.merge() != null && kind.merge().into().equals(other.id());
    }

    private static String on(TaskKindCard kind, ShopClock clock) {
        return kind.merge() == null ? "" : DAY.format(clock.dateOf(kind.merge().at()));
    }

    /** A kind that others are counted as is not counted as a third: the chain would have to be read to be understood. */
    private static Map<String, String> choices(TaskKindCard kind, List<TaskKindCard> all) {
        Map<String, String> choices = new LinkedHashMap<>();
        if (kind.merge() == null && all.stream().noneMatch(other -> isInto(other, kind))) {
            all.stream()
                    .filter(other -> other.active() && other.unit() == kind.unit())
                    .filter(other -> !other.id().equals(kind.id()))
                    .forEach(other -> choices.put(other.id().toString(), other.stageName() + ": " + other.name()));
        }
        return choices;
    }

    /** {@code 0.06 to 0.20}, or null where neither end is known. */
    @Nullable
    public String range() {
        if (kind.low() == null && kind.high() == null) {
            return null;
        }
        return (kind.low() == null ? "?" : kind.low()) + " to " + (kind.high() == null ? "?" : kind.high());
    }

    public String time(KindWait wait) {
        return WaitTime.words(wait.minutes());
    }
}
