package org.tallywright.calibration;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.tallywright.calibration.engine.CrewScatter;

/** Lays the shares a job was priced with beside the hours that those people logged on it. */
final class CrewShares {
    private CrewShares() {}

    /** A job on which none of them logged anything says nothing; whoever had no share does not count. */
    static CrewScatter learn(List<CostPast.CrewHours> rows) {
        Map<UUID, List<CostPast.CrewHours>> jobs = new LinkedHashMap<>();
        rows.forEach(
                row -> jobs.computeIfAbsent(row.job(), job -> new ArrayList<>()).add(row));
        return CrewScatter.learn(jobs.values().stream()
                .map(CrewShares::shares)
                .filter(crew -> !crew.isEmpty())
                .toList());
    }

    private static List<CrewScatter.Share> shares(List<CostPast.CrewHours> crew) {
        double minutes = crew.stream().mapToLong(CostPast.CrewHours::minutes).sum();
        double planned =
                crew.stream().mapToDouble(row -> row.planned().doubleValue()).sum();
        return minutes <= 0 || planned <= 0
                ? List.of()
                : crew.stream()
                        .map(row ->
                                new CrewScatter.Share(row.planned().doubleValue() / planned, row.minutes() / minutes))
                        .toList();
    }
}
