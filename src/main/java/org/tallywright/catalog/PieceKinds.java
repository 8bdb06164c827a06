package org.tallywright.catalog;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;

/** Looks up the kinds of piece and what each proposes. */
@Component
@Transactional(readOnly = true)
public class PieceKinds {
    private final JdbcClient jdbc;
    private final TaskKinds taskKinds;

    PieceKinds(JdbcClient jdbc, TaskKinds taskKinds) {
        this.jdbc = jdbc;
        this.taskKinds = taskKinds;
    }

    /** Every kind by name, those out of use too. */
    public List<PieceKindCard> all() {
        return cards("", Map.of());
    }

    /** The kinds in use, by name. */
    public List<PieceKindCard> active() {
        return cards("where active", Map.of());
    }

    public Optional<PieceKindCard> find(UUID id) {
        return cards("where id = :id", Map.of("id", id)).stream().findFirst();
    }

    /** @throws NotHere where there is none of that id */
    public PieceKindCard card(UUID id) {
        return find(id).orElseThrow(() -> new NotHere("kind of piece"));
    }

    /** The kind of that name, whatever its capitals. */
    public Optional<PieceKindCard> named(String name) {
        return cards("where lower(name) = lower(:name)", Map.of("name", name.strip())).stream()
                .findFirst();
    }

    /**
     * The tasks that a piece of this kind and size asks for, in order of the work. A task whose measure needs a size
     * that is not known yet is left out, and so is one whose task kind is out of use. A merged kind proposes the one that it
     * is counted as, once.
     *
     * @param widthUnits in units of 3.125 micrometres, null or 0 where not known; likewise the other two
     * @param count how many alike
     * @throws NotHere where there is no such kind
     */
    public List<Proposal> propose(
            UUID pieceKindId,
            @Nullable Long widthUnits,
            @Nullable Long heightUnits,
            @Nullable Long depthUnits,
            int count) {
        List<PieceKindLine> lines = card(pieceKindId).lines();
        PieceGeometry piece = new PieceGeometry(widthUnits, heightUnits, depthUnits, count);
        Map<UUID, TaskKindCard> kinds = taskKinds.countedAs(
                lines.stream().map(PieceKindLine::taskKindId).toList());
        Map<UUID, Proposal> proposals = new LinkedHashMap<>();
        for (PieceKindLine line : lines) {
            Optional.ofNullable(kinds.get(line.taskKindId()))
                    .filter(TaskKindCard::active)
                    .flatMap(kind -> line.quantity(piece, kind.unit())
                            .map(quantity ->
                                    new Proposal(kind.id(), quantity, kind.unit(), line.measure() == Measure.JOB)))
                    .ifPresent(one -> proposals.merge(one.taskKindId(), one, Proposal::and));
        }
        return List.copyOf(proposals.values());
    }

    private List<PieceKindCard> cards(String where, Map<String, ?> values) {
        Map<UUID, List<PieceKindLine>> lines = lines(where, values);
        return jdbc.sql("select * from piece_kind " + where + " order by lower(name)")
                .params(values)
                .query((row, number) -> new PieceKindCard(
                        row.getObject("id", UUID.class),
                        row.getString("name"),
                        row.getBoolean("active"),
                        row.getInt("version"),
                        List.copyOf(lines.getOrDefault(row.getObject("id", UUID.class), List.of()))))
                .list();
    }

    private Map<UUID, List<PieceKindLine>> lines(String where, Map<String, ?> values) {
        Map<UUID, List<PieceKindLine>> byKind = new HashMap<>();
        jdbc.sql("select * from piece_kind_task where piece_kind_id in (select id from piece_kind " + where
                        + ") order by piece_kind_id, position")
                .params(values)
                .query(row -> {
                    byKind.computeIfAbsent(row.getObject("piece_kind_id", UUID.class), k -> new ArrayList<>())
                            .add(new PieceKindLine(
                                    row.getObject("task_kind_id", UUID.class),
                                    Measure.of(row.getString("measure")),
                                    row.getBigDecimal("factor"),
                                    row.getBoolean("round_up")));
                });
        return byKind;
    }
}
