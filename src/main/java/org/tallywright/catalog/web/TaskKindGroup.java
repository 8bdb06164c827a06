package org.tallywright.catalog.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.tallywright.catalog.TaskKindCard;

/** The task kinds of one stage. */
record TaskKindGroup(String stage, List<TaskKindCard> kinds) {
    /** Groups kinds that stand in the order of the stages. */
    static List<TaskKindGroup> of(List<TaskKindCard> kinds) {
        Map<String, List<TaskKindCard>> byStage = new LinkedHashMap<>();
        kinds.forEach(kind -> byStage.computeIfAbsent(kind.stageName(), s -> new ArrayList<>())
                .add(kind));
        return byStage.entrySet().stream()
                .map(entry -> new TaskKindGroup(entry.getKey(), entry.getValue()))
                .toList();
    }
}
