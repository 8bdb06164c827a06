package org.tallywright.catalog;

import static java.util.stream.Collectors.joining;
import static java.util.stream.Collectors.toMap;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.shared.jpa.SaveTurn;

/** Adds, rewrites and sets aside kinds of piece. A kind never goes: pieces keep theirs. */
@Service
@Transactional
public class PieceKindDesk {
    private static final BigDecimal MOST_FACTOR = BigDecimal.valueOf(100_000);
    private static final BigDecimal LEAST_FACTOR = new BigDecimal("0.00001");

    private final PieceKindRows rows;
    private final TaskKinds taskKinds;
    private final SaveTurn turn;

    PieceKindDesk(PieceKindRows rows, TaskKinds taskKinds, SaveTurn turn) {
        this.rows = rows;
        this.taskKinds = taskKinds;
        this.turn = turn;
    }

    /**
     * Same id and content is a repeat and changes nothing; same id and other content needs the version in force.
     *
     * @throws Refused with the field and the reason
     * @throws Stale with both versions
     */
    public void save(SavePieceKind save) {
        turn.of(save.id());
        Map<UUID, String> names = taskKinds.all().stream().collect(toMap(TaskKindCard::id, TaskKindCard::name));
        check(save, names);
        PieceKind kept = rows.findById(save.id()).orElse(null);
        if (kept == null) {
            rows.save(new PieceKind(save));
        } else if (!kept.content().equals(new SavePieceKind(save.id(), null, save.name(), save.lines()))) {
            if (!Objects.equals(save.version(), kept.version())) {
                throw new Stale("kind of piece", differences(kept.content(), save, names));
            }
            kept.rewrite(save);
        }
    }

    /**
     * Adds a proposed task, or rewrites the one of the same task kind. Tasks stand in the order of the stages.
     *
     * @throws Stale where the kind of piece is no longer at that version and does not say this already
     */
    public void put(UUID id, @Nullable Integer version, PieceKindLine line) {
        SavePieceKind kept = content(id);
        if (!kept.lines().contains(line)) {
            List<PieceKindLine> lines = without(kept, line.taskKindId());
            lines.add(line);
            List<UUID> order = taskKinds.all().stream().map(TaskKindCard::id).toList();
            lines.sort(Comparator.comparing(l -> order.indexOf(l.taskKindId())));
            save(new SavePieceKind(id, version, kept.name(), lines));
        }
    }

    /** Takes a proposed task away; one that is not there is gone already. */
    public void remove(UUID id, @Nullable Integer version, UUID taskKindId) {
        SavePieceKind kept = content(id);
        save(new SavePieceKind(id, version, kept.name(), without(kept, taskKindId)));
    }

    public void rename(UUID id, @Nullable Integer version, String name) {
        save(new SavePieceKind(id, version, name, content(id).lines()));
    }

    private SavePieceKind content(UUID id) {
        turn.of(id);
        return rows.findById(id).orElseThrow(() -> new NotHere("kind of piece")).content();
    }

    private static List<PieceKindLine> without(SavePieceKind kept, UUID taskKindId) {
        return kept.lines().stream()
                .filter(line -> !line.taskKindId().equals(taskKindId))
                .collect(Collectors.toCollection(ArrayList::new));
    }

    public void use(UUID id, boolean inUse) {
        rows.findById(id).orElseThrow(() -> new NotHere("kind of piece")).use(inUse);
    }

    private void check(SavePieceKind save, Map<UUID, String> names) {
        if (rows.existsByNameIgnoreCaseAndIdNot(save.name(), save.id())) {
            throw new Refused("name", "There is a kind of piece of this name already.");
        }
        Set<UUID> seen = new HashSet<>();
        for (PieceKindLine line : save.lines()) {
            if (!names.containsKey(line.taskKindId())) {
                throw new Refused("taskKind", "Choose a task kind from the list.");
            }
            if (!seen.add(line.taskKindId())) {
                throw new Refused("taskKind", "\"" + names.get(line.taskKindId()) + "\" stands here twice.");
            }
            if (line.factor().compareTo(LEAST_FACTOR) < 0 || line.factor().compareTo(MOST_FACTOR) > 0) {
                throw new Refused("factor", "The factor is above 0 and at most 100,000.");
            }
        }
    }

    private static List<Stale.Row> differences(SavePieceKind theirs, SavePieceKind yours, Map<UUID, String> names) {
        return List.of(
                new Stale.Row("Name", theirs.name(), yours.name()),
                new Stale.Row("Proposed tasks", words(theirs, names), words(yours, names)));
    }

    private static String words(SavePieceKind save, Map<UUID, String> names) {
        return save.lines().stream()
                .map(line -> names.getOrDefault(line.taskKindId(), "") + ": "
                        + line.factor().toPlainString() + " x " + line.measure().code()
                        + (line.roundUp() ? ", whole" : ""))
                .collect(joining("; "));
    }
}
