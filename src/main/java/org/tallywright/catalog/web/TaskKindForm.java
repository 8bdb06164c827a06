package org.tallywright.catalog.web;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.catalog.KindWait;
import org.tallywright.catalog.Place;
import org.tallywright.catalog.SaveTaskKind;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.catalog.WaitTime;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Typed;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;
import org.tallywright.web.FormReader;

/** A task kind as typed. */
record TaskKindForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Nullable String name,
        @Nullable String stage,
        @Nullable String unit,
        @Nullable String unitHours,
        @Nullable String low,
        @Nullable String high,
        @Nullable String place,
        @Nullable String hourClass,
        @Nullable String drivers,
        @Nullable String basis,
        @Nullable String caution,
        @Nullable String cautionSource,
        @Nullable String wait1,
        @Nullable String wait1Time,
        @Nullable String wait1Basis,
        @Nullable String wait2,
        @Nullable String wait2Time,
        @Nullable String wait2Basis,
        @Nullable List<String> before) {

    static TaskKindForm blank(UUID id) {
        return new TaskKindForm(
                id, null, "", "", "each", "", "", "", "shop", "direct", "", "", "", "", "", "", "", "", "", "",
                List.of());
    }

    static TaskKindForm of(TaskKindCard kind) {
        KindWait first = kind.waits().isEmpty() ? null : kind.waits().get(0);
        KindWait second = kind.waits().size() < 2 ? null : kind.waits().get(1);
        return new TaskKindForm(
                kind.id(),
                kind.version(),
                kind.name(),
                kind.stageId().toString(),
                kind.unit().code(),
                kind.unitHours().toString(),
                hours(kind.low()),
                hours(kind.high()),
                kind.place().code(),
                kind.hourClass().code(),
                kind.drivers(),
                kind.basis(),
                kind.caution(),
                kind.cautionSource(),
                what(first),
                time(first),
                basis(first),
                what(second),
                time(second),
                basis(second),
                kind.before().stream().map(UUID::toString).toList());
    }

    public boolean chose(UUID kind) {
        return before != null && before.contains(kind.toString());
    }

    /** The save this asks for, or null with every refusal in {@code read}. */
    @Nullable
    SaveTaskKind read(UUID savedId, FormReader read) {
        String readName = read.field("name", () -> Typed.requiredLine(Picked.text(name), 120));
        UUID readStage = read.field("stage", () -> Picked.id(stage, "Choose a stage."));
        Unit readUnit = read.field("unit", () -> Unit.of(Picked.text(unit)));
        UnitHours rate = read.field("unitHours", () -> UnitHours.of(Picked.text(unitHours)));
        UnitHours readLow = read.optional("low", low, () -> UnitHours.of(Picked.text(low)));
        UnitHours readHigh = read.optional("high", high, () -> UnitHours.of(Picked.text(high)));
        Place readPlace = read.field("place", () -> Place.of(Picked.text(place)));
        HourClass readClass = read.field("hourClass", () -> HourClass.of(Picked.text(hourClass)));
        String readDrivers = read.field("drivers", () -> Typed.line(Picked.text(drivers), 300));
        String readBasis = read.field("basis", () -> orNoSource(Typed.line(Picked.text(basis), 400)));
        String readCaution = read.field("caution", () -> Typed.line(Picked.text(caution), 400));
        String readSource = read.field("cautionSource", () -> Typed.line(Picked.text(cautionSource), 300));
        List<KindWait> waits = waits(read);
        Set<UUID> readBefore = read.field("before", this::chosen);
        if (read.refused()) {
            return null;
        }
        return new SaveTaskKind(
                savedId,
                version,
                requireNonNull(readName),
                requireNonNull(readStage),
                requireNonNull(readUnit),
                requireNonNull(rate),
                readLow,
                readHigh,
                requireNonNull(readPlace),
                requireNonNull(readClass),
                requireNonNull(readDrivers),
                requireNonNull(readBasis),
                requireNonNull(readCaution),
                requireNonNull(readSource),
                waits,
                requireNonNull(readBefore));
    }

    private List<KindWait> waits(FormReader read) {
        List<KindWait> waits = new ArrayList<>();
        addWait(waits, read, "wait1", wait1, wait1Time, wait1Basis);
        addWait(waits, read, "wait2", wait2, wait2Time, wait2Basis);
        return waits;
    }

    private static void addWait(
            List<KindWait> waits,
            FormReader read,
            String field,
            @Nullable String what,
            @Nullable String time,
            @Nullable String basis) {
        if (Picked.text(what).isBlank() && Picked.text(time).isBlank()) {
            return;
        }
        String readWhat = read.field(field, () -> Typed.requiredLine(Picked.text(what), 120));
        Integer minutes = read.field(field + "Time", () -> WaitTime.minutes(Picked.text(time)));
        String readBasis = read.field(field + "Basis", () -> orNoSource(Typed.line(Picked.text(basis), 400)));
        if (readWhat != null && minutes != null && readBasis != null) {
            waits.add(new KindWait(readWhat, minutes, readBasis));
        }
    }

    private Set<UUID> chosen() {
        Set<UUID> chosen = new LinkedHashSet<>();
        for (String each : before == null ? List.<String>of() : before) {
            chosen.add(Picked.id(each));
        }
        if (chosen.size() > 50) {
            throw new NotUnderstood("Choose at most 50.");
        }
        return chosen;
    }

    private static String orNoSource(String basis) {
        return basis.isEmpty() ? TaskKindCard.NO_SOURCE : basis;
    }

    private static String hours(@Nullable UnitHours hours) {
        return hours == null ? "" : hours.toString();
    }

    private static String what(@Nullable KindWait wait) {
        return wait == null ? "" : wait.what();
    }

    private static String time(@Nullable KindWait wait) {
        return wait == null ? "" : WaitTime.words(wait.minutes());
    }

    private static String basis(@Nullable KindWait wait) {
        return wait == null ? "" : wait.basis();
    }
}
