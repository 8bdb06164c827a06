package org.tallywright.catalog;

import static java.util.stream.Collectors.joining;
import static java.util.stream.Collectors.toMap;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Stale;
import org.tallywright.shared.UnitHours;

/** Two versions of a task kind, field by field, in words. */
final class TaskKindWords {
    private TaskKindWords() {}

    static List<Stale.Row> rows(
            SaveTaskKind theirs, SaveTaskKind yours, List<StageCard> stages, List<TaskKindCard> kinds) {
        Map<UUID, String> stage = stages.stream().collect(toMap(StageCard::id, StageCard::name));
        Map<UUID, String> kind = kinds.stream().collect(toMap(TaskKindCard::id, TaskKindCard::name));
        Function<String, Function<Function<SaveTaskKind, String>, Stale.Row>> row =
                label -> field -> new Stale.Row(label, field.apply(theirs), field.apply(yours));
        return List.of(
                row.apply("Name").apply(SaveTaskKind::name),
                row.apply("Stage").apply(save -> stage.getOrDefault(save.stageId(), "")),
                row.apply("Unit").apply(save -> save.unit().code()),
                row.apply("Starting rate").apply(save -> hours(save.unitHours())),
                row.apply("Low").apply(save -> hours(save.low())),
                row.apply("High").apply(save -> hours(save.high())),
                row.apply("Where").apply(save -> save.place().code()),
                row.apply("Hour class").apply(save -> save.hourClass().label()),
                row.apply("What makes it slower").apply(SaveTaskKind::drivers),
                row.apply("Basis").apply(SaveTaskKind::basis),
                row.apply("Caution").apply(SaveTaskKind::caution),
                row.apply("Source of the caution").apply(SaveTaskKind::cautionSource),
                row.apply("Waits")
                        .apply(save -> save.waits().stream()
                                .map(wait -> wait.what() + ", " + wait.minutes() + " min")
                                .collect(joining("; "))),
                row.apply("Comes after")
                        .apply(save -> save.before().stream()
                                .map(id -> kind.getOrDefault(id, ""))
                                .sorted()
                                .collect(joining("; "))));
    }

    private static String hours(@Nullable UnitHours hours) {
        return hours == null ? "" : hours.toString();
    }
}
