package org.tallywright.catalog;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.shared.UnitHours;
import org.tallywright.shared.jpa.SaveTurn;
import org.tallywright.trail.Trail;

/** Adds, rewrites and sets aside task kinds. A kind never goes: jobs and their hours keep theirs. */
@Service
@Transactional
public class TaskKindDesk {
    private static final BigDecimal MOST_HOURS = BigDecimal.valueOf(1000);
    private static final int MOST_WAITS = 2;

    private final TaskKindRows rows;
    private final TaskKinds lookUp;
    private final Stages stages;
    private final SaveTurn turn;
    private final Trail trail;
    private final ApplicationEventPublisher events;

    TaskKindDesk(
            TaskKindRows rows,
            TaskKinds lookUp,
            Stages stages,
            SaveTurn turn,
            Trail trail,
            ApplicationEventPublisher events) {
        this.rows = rows;
        this.lookUp = lookUp;
        this.stages = stages;
        this.turn = turn;
        this.trail = trail;
        this.events = events;
    }

    /**
     * Same id and content is a repeat and changes nothing; same id and other content needs the version in force.
     *
     * @throws Refused with the field and the reason
     * @throws Stale with both versions
     */
    public void save(SaveTaskKind save, UUID by) {
        trail.by(by);
        turn.of(save.id());
        check(save);
        TaskKind kept = rows.findById(save.id()).orElse(null);
        if (kept == null) {
            rows.save(new TaskKind(Codes.from(save.name(), rows::existsByCode), save));
        } else if (!kept.content().equals(save.unversioned())) {
            if (!Objects.equals(save.version(), kept.version())) {
                throw new Stale("task kind", differences(kept.content(), save));
            }
            SaveTaskKind before = kept.content();
            checkMerge(kept, before, save);
            kept.rewrite(save);
            tell(before, save);
        }
    }

    private void tell(SaveTaskKind before, SaveTaskKind now) {
        if (before.unitHours().compareTo(now.unitHours()) != 0 || before.unit() != now.unit()) {
            events.publishEvent(new StartingRateChanged(now.id(), now.name(), now.unit(), now.unitHours()));
        }
    }

    private void checkMerge(TaskKind kept, SaveTaskKind before, SaveTaskKind now) {
        if (kept.isMerged()) {
            throw new Refused(TaskKindMerging.TAKE_APART_FIRST);
        }
        if (before.unit() != now.unit() && rows.existsByMergedInto(kept.id())) {
            throw new Refused("unit", "Other kinds are counted as this one by this unit. Take them apart first.");
        }
    }

    public void use(UUID id, boolean inUse, UUID by) {
        trail.by(by);
        turn.of(id);
        TaskKind kept = rows.findById(id).orElseThrow(() -> new NotHere("task kind"));
        if (kept.isMerged()) {
            throw new Refused(TaskKindMerging.TAKE_APART_FIRST);
        }
        if (!inUse && rows.existsByMergedInto(id)) {
            throw new Refused("Other kinds are counted as this one. Take them apart first.");
        }
        kept.use(inUse);
    }

    private void check(SaveTaskKind save) {
        if (rows.existsByNameIgnoreCaseAndIdNot(save.name(), save.id())) {
            throw new Refused("name", "There is a task kind of this name already.");
        }
        if (stages.find(save.stageId()).isEmpty()) {
            throw new Refused("stage", "Choose a stage from the list.");
        }
        checkHours(save);
        if (save.waits().size() > MOST_WAITS) {
            throw new Refused("waits", "A task has at most " + MOST_WAITS + " waits: touch and full cure.");
        }
        if (!save.caution().isEmpty() && save.cautionSource().isEmpty()) {
            throw new Refused("cautionSource", "Name the source, or write \"" + TaskKindCard.COMMON_CAUTION + "\".");
        }
        checkOrder(save);
    }

    private static void checkHours(SaveTaskKind save) {
        BigDecimal hours = save.unitHours().amount();
        if (hours.signum() == 0 || hours.compareTo(MOST_HOURS) > 0) {
            throw new Refused("unitHours", "Hours per unit are above 0 and at most 1,000.");
        }
        UnitHours low = save.low();
        UnitHours high = save.high();
        if (low != null && low.compareTo(save.unitHours()) > 0) {
            throw new Refused("low", "The low end is above the starting rate.");
        }
        if (high != null && high.compareTo(save.unitHours()) < 0) {
            throw new Refused("high", "The high end is below the starting rate.");
        }
    }

    private void checkOrder(SaveTaskKind save) {
        Map<UUID, Set<UUID>> before = new HashMap<>();
        Map<UUID, String> names = new HashMap<>();
        lookUp.all().forEach(kind -> {
            before.put(kind.id(), Set.copyOf(kind.before()));
            names.put(kind.id(), kind.name());
        });
        Precedence order = new Precedence(before);
        for (UUID first : save.before()) {
            if (first.equals(save.id())) {
                throw new Refused("before", "A task kind cannot come before itself.");
            }
            if (!names.containsKey(first)) {
                throw new Refused("before", "Choose from the list.");
            }
            if (order.isBefore(save.id(), first)) {
                throw new Refused("before", "\"" + names.get(first) + "\" already comes after this one.");
            }
        }
    }

    private List<Stale.Row> differences(SaveTaskKind theirs, SaveTaskKind yours) {
        return TaskKindWords.rows(theirs, yours, stages.all(), lookUp.all());
    }
}
