package org.tallywright.catalog;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderBy;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;

/** An entry of the catalogue with its waits and what comes before it; they are saved and versioned as one. */
@Entity
class TaskKind {
    @Id
    private UUID id;

    private String code;
    private String name;
    private UUID stageId;
    private Unit unit;
    private UnitHours unitHours;
    private @Nullable UnitHours lowUnitHours;
    private @Nullable UnitHours highUnitHours;

    @jakarta.persistence.Convert(converter = PlaceColumn.class)
    private Place place;

    private HourClass hourClass;
    private String drivers;
    private String basis;
    private String caution;
    private String cautionSource;
    private boolean active = true;
    private @Nullable UUID mergedInto;
    private @Nullable Instant mergedAt;
    private @Nullable UUID mergedBy;

    @ElementCollection
    @CollectionTable(name = "task_kind_wait", joinColumns = @JoinColumn(name = "task_kind_id"))
    @OrderBy("position")
    private List<KeptWait> waits = new ArrayList<>();

    @ElementCollection
    @CollectionTable(name = "task_kind_before", joinColumns = @JoinColumn(name = "task_kind_id"))
    @Column(name = "before_kind_id")
    private Set<UUID> before = new HashSet<>();

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected TaskKind() {}

    @SuppressWarnings("NullAway.Init")
    TaskKind(String code, SaveTaskKind first) {
        this.id = first.id();
        this.code = code;
        rewrite(first);
    }

    UUID id() {
        return id;
    }

    @Nullable
    Integer version() {
        return version;
    }

    SaveTaskKind content() {
        return new SaveTaskKind(
                id,
                null,
                name,
                stageId,
                unit,
                unitHours,
                lowUnitHours,
                highUnitHours,
                place,
                hourClass,
                drivers,
                basis,
                caution,
                cautionSource,
                waits.stream().map(KeptWait::plain).toList(),
                Set.copyOf(before));
    }

    final void rewrite(SaveTaskKind save) {
        name = save.name();
        stageId = save.stageId();
        unit = save.unit();
        unitHours = save.unitHours();
        lowUnitHours = save.low();
        highUnitHours = save.high();
        place = save.place();
        hourClass = save.hourClass();
        drivers = save.drivers();
        basis = save.basis();
        caution = save.caution();
        cautionSource = save.cautionSource();
        if (!waits.stream().map(KeptWait::plain).toList().equals(save.waits())) {
            waits.clear();
            save.waits().forEach(wait -> waits.add(KeptWait.of(waits.size() + 1, wait)));
        }
        before.retainAll(save.before());
        before.addAll(save.before());
    }

    void use(boolean inUse) {
        active = inUse;
    }

    boolean isActive() {
        return active;
    }

    @Nullable
    UUID mergedInto() {
        return mergedInto;
    }

    boolean isMerged() {
        return mergedInto != null;
    }

    boolean isMergedInto(UUID other) {
        return other.equals(mergedInto);
    }

    /** Counted as the other from now on, and out of use. */
    void merge(UUID into, Instant at, UUID by) {
        active = false;
        mergedInto = into;
        mergedAt = at;
        mergedBy = by;
    }

    /** A kind of its own again, and in use. */
    void part() {
        active = true;
        mergedInto = null;
        mergedAt = null;
        mergedBy = null;
    }
}
