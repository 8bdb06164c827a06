package org.tallywright.catalog;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;

/**
 * A task kind as the catalogue has it.
 *
 * @param unitHours the starting rate: hours per unit of one skilled person
 * @param low the least that is usual, where known
 * @param high the most that is usual, where known
 * @param drivers what makes it slower
 * @param basis where the rate comes from
 * @param cautionSource the public source of the caution, or "common caution"
 * @param waits the touch wait first, the full cure second
 * @param before ids of the task kinds that come first, as an advice of order
 * @param merge null for a kind of its own
 */
public record TaskKindCard(
        UUID id,
        String code,
        String name,
        UUID stageId,
        String stageName,
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
        boolean active,
        int version,
        List<KindWait> waits,
        List<UUID> before,
        @Nullable Merge merge) {

    public static final String NO_SOURCE = "common practice, no source";
    public static final String COMMON_CAUTION = "common caution";

    /** @param into the task kind that this one is counted as, always one of its own */
    public record Merge(UUID into, Instant at, UUID by) {}

    public boolean hasCaution() {
        return !caution.isEmpty();
    }
}
