package org.tallywright.catalog;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;
import org.tallywright.shared.jpa.SaveTurn;
import org.tallywright.trail.Trail;

/**
 * Makes two task kinds of the same unit count as one, and takes them apart again. Tasks keep the kind and the name they were
 * logged under; what is new leads to the kind that stays, with its rate, waits, order and caution.
 */
@Service
@Transactional
public class TaskKindMerging {
    static final String TAKE_APART_FIRST = "This kind is counted as another. Take it apart first.";

    private final TaskKindRows rows;
    private final SaveTurn turn;
    private final Trail trail;
    private final ShopClock clock;
    private final ApplicationEventPublisher events;

    TaskKindMerging(TaskKindRows rows, SaveTurn turn, Trail trail, ShopClock clock, ApplicationEventPublisher events) {
        this.rows = rows;
        this.turn = turn;
        this.trail = trail;
        this.clock = clock;
        this.events = events;
    }

    /**
     * Counts one kind as another; said again it is a repeat.
     *
     * @param version of the first that the page showed
     * @throws Refused where they differ in unit, are the same, or one of them is merged already
     */
    public void merge(UUID id, @Nullable Integer version, UUID into, UUID by) {
        trail.by(by);
        // In one order, so that two merges crossing each other wait and do not lock.
        Stream.of(id, into).sorted().forEach(turn::of);
        TaskKind kept = row(id);
        TaskKind other = rows.findById(into).orElseThrow(() -> refused("Choose from the list."));
        if (kept.isMergedInto(into)) {
            return;
        }
        check(kept, other);
        if (!Objects.equals(version, kept.version())) {
            throw new Stale(
                    "task kind",
                    List.of(new Stale.Row(
                            "Counted as", kept.content().name(), other.content().name())));
        }
        kept.merge(into, clock.now(), by);
        tell(kept, other, false);
    }

    private void check(TaskKind kept, TaskKind other) {
        SaveTaskKind from = kept.content();
        SaveTaskKind into = other.content();
        if (from.id().equals(into.id())) {
            throw refused("A kind cannot be counted as itself.");
        }
        if (from.unit() != into.unit()) {
            throw refused("Hours per " + from.unit().label() + " and per "
                    + into.unit().label() + " cannot be counted together.");
        }
        if (kept.isMerged()) {
            throw refused(TAKE_APART_FIRST);
        }
        if (rows.existsByMergedInto(from.id())) {
            throw refused("Other kinds are counted as \"" + from.name() + "\". Take them apart first.");
        }
        if (other.isMerged()) {
            throw refused("\"" + into.name()
                    + "\" is itself counted as another kind. Choose that one, or take it apart first.");
        }
        if (!other.isActive()) {
            throw refused("\"" + into.name() + "\" is out of use. Take it back into use first.");
        }
    }

    private static Refused refused(String why) {
        return new Refused("into", why);
    }

    /** A kind of its own again, and in use; said again it is a repeat. */
    public void part(UUID id, UUID by) {
        trail.by(by);
        turn.of(id);
        TaskKind kept = row(id);
        UUID into = kept.mergedInto();
        if (into != null) {
            kept.part();
            tell(kept, row(into), true);
        }
    }

    private TaskKind row(UUID id) {
        return rows.findById(id).orElseThrow(() -> new NotHere("task kind"));
    }

    private void tell(TaskKind kept, TaskKind other, boolean apart) {
        events.publishEvent(new TaskKindMerged(
                kept.id(), kept.content().name(), other.id(), other.content().name(), apart));
    }
}
