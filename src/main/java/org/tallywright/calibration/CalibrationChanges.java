package org.tallywright.calibration;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;

/** What each kept calibration changed. */
@Service
public class CalibrationChanges {
    private final CalibrationRows rows;

    CalibrationChanges(CalibrationRows rows) {
        this.rows = rows;
    }

    /**
     * A rate before and after.
     *
     * @param before null where the kind was new
     */
    public record Moved(UUID kind, @Nullable Double before, double after, int tasksBefore, int tasks) {}

    /**
     * What one calibration changed against the last one made before it that is still kept.
     *
     * @param before the one it is compared with; null for the first
     * @param fingerprint the first letters of it
     * @param added numbers of jobs that it learnt from anew
     * @param gone numbers of those it no longer learns from
     * @param moved rates that moved by one per cent or more, the most first
     */
    public record Change(
            TrackRecord.Kept row,
            TrackRecord.@Nullable Kept before,
            String fingerprint,
            int tasks,
            int jobs,
            List<String> added,
            List<String> gone,
            List<Moved> moved) {}

    @Transactional(readOnly = true)
    public Change change(UUID id) {
        CalibrationRows.Kept now = rows.kept(id).orElseThrow(() -> new NotHere("calibration"));
        Optional<CalibrationRows.Kept> before = rows.before(id).flatMap(rows::kept);
        List<String> jobsNow = numbers(now);
        List<String> jobsBefore = before.map(CalibrationChanges::numbers).orElse(List.of());
        return new Change(
                TrackRecord.kept(now.row()),
                before.map(CalibrationRows.Kept::row).map(TrackRecord::kept).orElse(null),
                now.row().fingerprint().substring(0, 12),
                now.figures().tasks(),
                now.figures().jobs(),
                jobsNow.stream().filter(job -> !jobsBefore.contains(job)).toList(),
                jobsBefore.stream().filter(job -> !jobsNow.contains(job)).toList(),
                moved(now, before.orElse(null)));
    }

    private static List<String> numbers(CalibrationRows.Kept kept) {
        return kept.past().jobs().stream().map(PastJob::number).toList();
    }

    private static List<Moved> moved(CalibrationRows.Kept now, CalibrationRows.@Nullable Kept before) {
        Map<UUID, Figures.KindRate> old = new HashMap<>();
        if (before != null) {
            before.figures().kinds().forEach(rate -> old.put(rate.kind(), rate));
        }
        List<Moved> all = new ArrayList<>();
        for (Figures.KindRate rate : now.figures().kinds()) {
            Figures.KindRate was = old.get(rate.kind());
            int tasksBefore = was == null ? 0 : was.tasks();
            boolean shifted = was == null ? rate.tasks() > 0 : Math.abs(Math.log(rate.median() / was.median())) >= 0.01;
            if (shifted || tasksBefore != rate.tasks()) {
                all.add(new Moved(
                        rate.kind(), was == null ? null : was.median(), rate.median(), tasksBefore, rate.tasks()));
            }
        }
        all.sort(Comparator.comparingDouble(CalibrationChanges::size).reversed());
        return all;
    }

    private static double size(Moved moved) {
        return moved.before() == null ? 0 : Math.abs(Math.log(moved.after() / moved.before()));
    }
}
