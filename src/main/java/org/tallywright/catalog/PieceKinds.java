package org.tallywright.catalog;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Quantity;

/** Looks up the kinds of piece and what each proposes. */
@Component
@Transactional(readOnly = true)
public class PieceKinds {
    private static final Quantity NONE = Quantity.of(0);

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

    /** The same with nothing counted from parts. */
    public List<Proposal> propose(
            @Nullable UUID pieceKindId,
            @Nullable Long widthUnits,
            @Nullable Long heightUnits,
            @Nullable Long depthUnits,
            int count) {
        return propose(pieceKindId, widthUnits, heightUnits, depthUnits, count, Map.of());
    }

    /**
     * The tasks that a piece of this kind and size asks for, in order of the work. A task whose measure needs a size
     * that is not known yet is left out, and so is one whose task kind is out of use. What was counted from the parts
     * stands in place of the rule of that very kind; only then do merged kinds add up to the one they are counted as,
     * so that a count of one of them leaves the other its rule. What is once for the job and what is for the piece stay
     * two proposals.
     *
     * @param pieceKindId null for a piece of no kind: only what was counted
     * @param widthUnits in units of 3.125 micrometres, null or 0 where not known; likewise the other two
     * @param count how many alike
     * @param counted quantities by task kind, merged ones by their own id; nothing counted leaves the task out
     * @throws NotHere where there is no such kind
     */
    public List<Proposal> propose(
            @Nullable UUID pieceKindId,
            @Nullable Long widthUnits,
            @Nullable Long heightUnits,
            @Nullable Long depthUnits,
            int count,
            Map<UUID, Quantity> counted) {
        List<PieceKindLine> lines =
                pieceKindId == null ? List.of() : card(pieceKindId).lines();
        PieceGeometry piece = new PieceGeometry(widthUnits, heightUnits, depthUnits, count);
        Set<UUID> asked = new LinkedHashSet<>();
        lines.forEach(line -> asked.add(line.taskKindId()));
        asked.addAll(counted.keySet());
        Map<UUID, TaskKindCard> kinds = taskKinds.countedAs(asked);
        Map<Proposal.Key, Proposal> proposals = new LinkedHashMap<>();
        for (PieceKindLine line : lines) {
            boolean wholeJob = line.measure() == Measure.JOB;
            TaskKindCard kind = kinds.get(line.taskKindId());
            Quantity parts = counted.get(line.taskKindId());
            if (parts != null) {
                add(proposals, kind, parts, wholeJob, Proposal.Basis.PARTS);
            } else if (kind != null) {
                line.quantity(piece, kind.unit())
                        .ifPresent(rule -> add(proposals, kind, rule, wholeJob, Proposal.Basis.RULE));
            }
            asked.remove(line.taskKindId());
        }
        asked.forEach(
                own -> add(proposals, kinds.get(own), counted.getOrDefault(own, NONE), false, Proposal.Basis.PARTS));
        return List.copyOf(proposals.values());
    }

    private static void add(
            Map<Proposal.Key, Proposal> proposals,
            @Nullable TaskKindCard kind,
            Quantity quantity,
            boolean wholeJob,
            Proposal.Basis basis) {
        if (kind != null && kind.active() && !quantity.isZero()) {
            Proposal one = new Proposal(kind.id(), quantity, kind.unit(), wholeJob, basis);
            proposals.merge(one.key(), one, Proposal::and);
        }
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
