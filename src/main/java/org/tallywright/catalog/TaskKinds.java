package org.tallywright.catalog;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;

/** Looks up the shop's task kinds, in the order of the stages. */
@Component
@Transactional(readOnly = true)
public class TaskKinds {
    private static final String CARD = """
            select k.*, s.name as stage_name from task_kind k join stage s on s.id = k.stage_id %s
            order by s.position, k.id""";

    private final JdbcClient jdbc;

    TaskKinds(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Every task kind, those out of use too. */
    public List<TaskKindCard> all() {
        return cards("", Map.of());
    }

    /** The task kinds in use. */
    public List<TaskKindCard> active() {
        return cards("where k.active", Map.of());
    }

    public Optional<TaskKindCard> find(UUID id) {
        return cards("where k.id = :id", Map.of("id", id)).stream().findFirst();
    }

    /** @throws NotHere where there is none of that id */
    public TaskKindCard card(UUID id) {
        return find(id).orElseThrow(() -> new NotHere("task kind"));
    }

    /** By its short code, such as {@code rip_hardwood}; codes never change. */
    public Optional<TaskKindCard> coded(String code) {
        return cards("where k.code = :code", Map.of("code", code)).stream().findFirst();
    }

    /** Those of the given ids that exist, by id. */
    public Map<UUID, TaskKindCard> byId(Collection<UUID> ids) {
        Map<UUID, TaskKindCard> found = new LinkedHashMap<>();
        if (!ids.isEmpty()) {
            cards("where k.id in (:ids)", Map.of("ids", ids)).forEach(card -> found.put(card.id(), card));
        }
        return found;
    }

    /** The kinds that each of the given ids counts as today: itself, or the one that it was merged into. */
    public Map<UUID, TaskKindCard> countedAs(Collection<UUID> ids) {
        Map<UUID, TaskKindCard> asked = byId(ids);
        Map<UUID, TaskKindCard> targets = byId(asked.values().stream()
                .map(TaskKindCard::merge)
                .filter(Objects::nonNull)
                .map(TaskKindCard.Merge::into)
                .toList());
        asked.replaceAll((id, card) ->
                card.merge() == null ? card : targets.getOrDefault(card.merge().into(), card));
        return asked;
    }

    /** The kinds that are counted as that one besides itself. */
    public List<TaskKindCard> mergedInto(UUID id) {
        return cards("where k.merged_into = :id", Map.of("id", id));
    }

    private List<TaskKindCard> cards(String where, Map<String, ?> values) {
        boolean few = !where.isEmpty();
        String these = few ? "where task_kind_id in (select k.id from task_kind k " + where + ")" : "";
        Map<UUID, List<KindWait>> waits = waits(these, values);
        Map<UUID, List<UUID>> before = before(these, values);
        return jdbc.sql(CARD.formatted(where))
                .params(values)
                .query((row, number) -> card(row, waits, before))
                .list();
    }

    private Map<UUID, List<KindWait>> waits(String these, Map<String, ?> values) {
        Map<UUID, List<KindWait>> byKind = new HashMap<>();
        jdbc.sql("select * from task_kind_wait " + these + " order by task_kind_id, position")
                .params(values)
                .query(row -> {
                    byKind.computeIfAbsent(row.getObject("task_kind_id", UUID.class), k -> new ArrayList<>())
                            .add(new KindWait(row.getString("what"), row.getInt("minutes"), row.getString("basis")));
                });
        return byKind;
    }

    private Map<UUID, List<UUID>> before(String these, Map<String, ?> values) {
        Map<UUID, List<UUID>> byKind = new HashMap<>();
        jdbc.sql("select * from task_kind_before " + these + " order by task_kind_id, before_kind_id")
                .params(values)
                .query(row -> {
                    byKind.computeIfAbsent(row.getObject("task_kind_id", UUID.class), k -> new ArrayList<>())
                            .add(row.getObject("before_kind_id", UUID.class));
                });
        return byKind;
    }

    private static TaskKindCard card(ResultSet row, Map<UUID, List<KindWait>> waits, Map<UUID, List<UUID>> before)
            throws SQLException {
        UUID id = row.getObject("id", UUID.class);
        return new TaskKindCard(
                id,
                row.getString("code"),
                row.getString("name"),
                row.getObject("stage_id", UUID.class),
                row.getString("stage_name"),
                Unit.of(row.getString("unit")),
                new UnitHours(row.getBigDecimal("unit_hours")),
                hours(row, "low_unit_hours"),
                hours(row, "high_unit_hours"),
                Place.of(row.getString("place")),
                HourClass.of(row.getString("hour_class")),
                row.getString("drivers"),
                row.getString("basis"),
                row.getString("caution"),
                row.getString("caution_source"),
                row.getBoolean("active"),
                row.getInt("version"),
                List.copyOf(waits.getOrDefault(id, List.of())),
                List.copyOf(before.getOrDefault(id, List.of())),
                merge(row));
    }

    private static TaskKindCard.@Nullable Merge merge(ResultSet row) throws SQLException {
        UUID into = row.getObject("merged_into", UUID.class);
        return into == null
                ? null
                : new TaskKindCard.Merge(
                        into, row.getTimestamp("merged_at").toInstant(), row.getObject("merged_by", UUID.class));
    }

    private static @Nullable UnitHours hours(ResultSet row, String column) throws SQLException {
        return row.getBigDecimal(column) == null ? null : new UnitHours(row.getBigDecimal(column));
    }
}
