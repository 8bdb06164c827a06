package org.tallywright.calibration;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import org.tallywright.calibration.SaidRows.BidRow;
import org.tallywright.calibration.SaidRows.DroppedRow;
import org.tallywright.calibration.SaidRows.StageRow;
import org.tallywright.calibration.WorkRows.HoursRow;

/**
 * What was said of finished jobs while they were not, laid beside the hours they took. A forecast answers for all hours of its
 * job, forgotten tasks included, but not for those on tasks that the client ordered and paid for as a change later. Options
 * that he took with the bid are among what was said on the day of the yes. Where tasks of
 * a bid were dropped, like is laid beside like: the forecast less their share, against the hours without theirs.
 *
 * @param changes tasks that accepted change orders brought, by job
 * @param dropped what was dropped of accepted bids, by job
 */
record Said(
        Map<UUID, BidRow> bids,
        Map<UUID, List<StageRow>> stages,
        Map<UUID, Set<UUID>> changes,
        Map<UUID, DroppedRow> dropped) {

    Optional<AtBid> atBid(UUID job, List<HoursRow> hours) {
        BidRow said = bids.get(job);
        DroppedRow less = dropped.getOrDefault(job, DroppedRow.NONE);
        if (said == null || less.share() >= 1) {
            return Optional.empty();
        }
        Set<UUID> later = changes.getOrDefault(job, Set.of());
        double took = hours(hours, task -> later.contains(task) || less.tasks().contains(task));
        double kept = 1 - less.share();
        return Optional.of(new AtBid(
                said.on(),
                HoursRange.of(said.hours().times(kept)),
                said.unwidened().times(kept).probabilityBelow(took),
                took,
                less.tasks().isEmpty() ? null : new AtBid.Dropped(less.tasks().size(), less.share())));
    }

    List<AtStage> atStages(UUID job, List<HoursRow> hours) {
        Set<UUID> ordered = changes.getOrDefault(job, Set.of());
        return stages.getOrDefault(job, List.of()).stream()
                .map(said -> {
                    double took = hours(
                            hours,
                            task -> ordered.contains(task) && !said.tasks().contains(task));
                    return new AtStage(
                            said.percent(),
                            said.on(),
                            said.soFar(),
                            HoursRange.of(said.atEnd()),
                            said.unwidened().probabilityBelow(took - said.soFar()),
                            took);
                })
                .toList();
    }

    private static double hours(List<HoursRow> all, Predicate<UUID> without) {
        return all.stream()
                        .filter(row -> row.taskId() == null || !without.test(row.taskId()))
                        .mapToInt(HoursRow::minutes)
                        .sum()
                / 60.0;
    }
}
