package org.tallywright.catalog;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;

/**
 * Adds a task kind or rewrites one; the parts are those of {@link TaskKindCard}.
 *
 * @param version the version that was on the page, null for a new one
 */
public record SaveTaskKind(
        UUID id,
        @Nullable Integer version,
        String name,
        UUID stageId,
        Unit unit,
        UnitHours unitHours,
        @Nullable UnitHours low,
        @Nullable UnitHours high,
        Place place,
        HourClass hourClass,
        String drivers,
        String basis,
        String caution,
        String cautionSource,
        List<KindWait> waits,
        Set<UUID> before) {

    SaveTaskKind unversioned() {
        return new SaveTaskKind(
                id,
                null,
                name,
                stageId,
                unit,
                unitHours,
                low,
                high,
                place,
                hourClass,
                drivers,
                basis,
                caution,
                cautionSource,
                waits,
                before);
    }
}
