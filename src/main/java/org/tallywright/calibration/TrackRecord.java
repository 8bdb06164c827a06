package org.tallywright.calibration;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.people.People;
import org.tallywright.shared.Money;
import org.tallywright.shared.NotHere;

/** How good the shop's forecasts were: every finished job against what was known before it. Holds money: for the owner. */
@Service
public class TrackRecord {
    private static final int MOST_KEPT = 30;

    private final Shelf shelf;
    private final CalibrationRows rows;
    private final PastReader reader;
    private final People people;
    private final JdbcClient jdbc;

    TrackRecord(Shelf shelf, CalibrationRows rows, PastReader reader, People people, JdbcClient jdbc) {
        this.shelf = shelf;
        this.rows = rows;
        this.reader = reader;
        this.people = people;
        this.jdbc = jdbc;
    }

    /**
     * A finished job, hours in person-hours.
     *
     * @param knownJobs finished jobs known before it
     * @param result what the hours over or under the bid came to at the bid's labour rate; null without a bid
     */
    public record Line(
            String key,
            String number,
            String title,
            boolean imported,
            LocalDate closedOn,
            int knownJobs,
            double estimate,
            HoursRange said,
            double actual,
            boolean inside,
            @Nullable Double bidHours,
            @Nullable Money result) {}

    /**
     * @param inside jobs that ended in the range that should hold four in five
     * @param under jobs that stayed under their P80
     * @param bias actual over the likely hours; empty below three jobs
     * @param narrow the middle job's range, low and high over its likely hours
     * @param money all results together
     */
    public record Summary(
            Coverage inside,
            Coverage under,
            @Nullable MeanRatio bias,
            double narrow,
            double wide,
            @Nullable Money money,
            int bids) {}

    /** Mean share of hours of a class that no line named, per hour on lines. */
    public record OffLine(String hourClass, double share) {}

    public record OffLines(double share, double startingShare, int jobs, List<OffLine> classes) {}

    /** Somebody whose hours are the estimate to the minute more often than chance allows. */
    public record Copied(String name, int tasks, int equal) {}

    public record LeftOut(String key, String number, String reason) {}

    public record Kept(UUID id, String state, String why, String step, Instant at, boolean current, boolean underWay) {}

    /** @param smallTasks the smaller half of all tasks against the larger half; null below six tasks */
    public record Page(
            List<Line> lines,
            @Nullable Summary summary,
            @Nullable OffLines offLines,
            @Nullable Trend smallTasks,
            List<Copied> copied,
            List<String> noted,
            List<LeftOut> leftOut,
            List<Kept> calibrations) {}

    @Transactional(readOnly = true)
    public Page page() {
        Optional<CalibrationRows.Kept> kept = shelf.kept();
        List<Line> lines = new ArrayList<>();
        kept.ifPresent(k -> k.record().forEach(job -> lines.add(0, line(job))));
        return new Page(
                lines,
                kept.filter(k -> !k.record().isEmpty())
                        .map(k -> summary(k.record(), lines))
                        .orElse(null),
                kept.map(TrackRecord::offLines).orElse(null),
                kept.flatMap(k -> Trend.bySize(k.past().tasks())).orElse(null),
                kept.map(this::copied).orElse(List.of()),
                kept.map(TrackRecord::noted).orElse(List.of()),
                leftOut(),
                rows.newest(MOST_KEPT).stream().map(TrackRecord::kept).toList());
    }

    private static Line line(Judged job) {
        Money result = null;
        Double bid = job.bidHours();
        BigDecimal rate = job.labourRate();
        if (bid != null && rate != null) {
            result = Money.of(rate.multiply(BigDecimal.valueOf(bid - job.actual())));
        }
        return new Line(
                job.key(),
                job.number(),
                job.title(),
                job.imported(),
                job.closedOn(),
                job.knownJobs(),
                job.estimate(),
                job.hours(),
                job.actual(),
                job.inside(),
                bid,
                result);
    }

    private static Summary summary(List<Judged> record, List<Line> lines) {
        int n = record.size();
        List<Money> results = lines.stream()
                .map(Line::result)
                .filter(java.util.Objects::nonNull)
                .toList();
        return new Summary(
                Coverage.of((int) record.stream().filter(Judged::inside).count(), n),
                Coverage.of((int) record.stream().filter(Judged::underP80).count(), n),
                MeanRatio.of(record.stream()
                                .mapToDouble(job -> job.actual() / job.hours().median())
                                .toArray())
                        .orElse(null),
                Fitted.middle(record.stream()
                        .mapToDouble(job -> job.hours().low() / job.hours().median())
                        .toArray()),
                Fitted.middle(record.stream()
                        .mapToDouble(job -> job.hours().high() / job.hours().median())
                        .toArray()),
                results.isEmpty() ? null : Money.sum(results),
                results.size());
    }

    private static OffLines offLines(CalibrationRows.Kept kept) {
        Figures figures = kept.figures();
        return new OffLines(
                figures.offLineShare(),
                figures.offLineStarting(),
                (int) kept.past().jobs().stream().filter(job -> !job.imported()).count(),
                figures.offLine().entrySet().stream()
                        .filter(part -> part.getValue() >= 0.001)
                        .sorted(Map.Entry.<String, Double>comparingByValue().reversed())
                        .map(part -> new OffLine(part.getKey(), part.getValue()))
                        .toList());
    }

    private List<Copied> copied(CalibrationRows.Kept kept) {
        return kept.figures().copied().stream()
                .filter(Figures.Copied::suspicious)
                .map(c -> new Copied(people.named(c.person()).name(), c.tasks(), c.equal()))
                .toList();
    }

    /** {@code 2 tasks of job 26-014 cut: ...}. */
    private static List<String> noted(CalibrationRows.Kept kept) {
        Map<String, String> numbers = new HashMap<>();
        kept.past().jobs().forEach(job -> numbers.put(job.key(), job.number()));
        return kept.figures().noted().stream()
                .map(note -> "A task of job " + numbers.getOrDefault(note.job(), "?") + " " + note.what())
                .sorted()
                .distinct()
                .toList();
    }

    private List<LeftOut> leftOut() {
        Map<String, String> reasons = new HashMap<>();
        jdbc.sql("select job_key, reason from job_left_out").query(row -> {
            reasons.put(row.getString("job_key"), row.getString("reason"));
        });
        if (reasons.isEmpty()) {
            return List.of();
        }
        return reader.everything().jobs().stream()
                .filter(job -> reasons.containsKey(job.key()))
                .map(job -> new LeftOut(job.key(), job.number(), reasons.getOrDefault(job.key(), "")))
                .toList();
    }

    private static Kept kept(CalibrationRows.Row row) {
        Instant made = row.madeAt();
        return new Kept(
                row.id(),
                row.state(),
                row.why(),
                row.step(),
                made == null ? row.askedAt() : made,
                row.current(),
                row.isUnderWay());
    }

    /**
     * A rate before and after.
     *
     * @param before null where the kind was new
     */
    public record Moved(UUID kind, @Nullable Double before, double after, int tasksBefore, int tasks) {}

    /**
     * What one calibration changed against the one made before it.
     *
     * @param fingerprint the first letters of it
     * @param added numbers of jobs that it learnt from anew
     * @param gone numbers of those it no longer learns from
     * @param moved rates that moved by one per cent or more, the most first
     */
    public record Change(
            Kept row,
            String fingerprint,
            int tasks,
            int jobs,
            List<String> added,
            List<String> gone,
            List<Moved> moved,
            boolean first) {}

    @Transactional(readOnly = true)
    public Change change(UUID id) {
        CalibrationRows.Kept now = rows.kept(id).orElseThrow(() -> new NotHere("calibration"));
        Optional<CalibrationRows.Kept> before = rows.before(id).flatMap(rows::kept);
        List<String> jobsNow = numbers(now);
        List<String> jobsBefore = before.map(TrackRecord::numbers).orElse(List.of());
        return new Change(
                kept(now.row()),
                now.row().fingerprint().substring(0, 12),
                now.figures().tasks(),
                now.figures().jobs(),
                jobsNow.stream().filter(job -> !jobsBefore.contains(job)).toList(),
                jobsBefore.stream().filter(job -> !jobsNow.contains(job)).toList(),
                moved(now, before.orElse(null)),
                before.isEmpty());
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
        all.sort(Comparator.comparingDouble(TrackRecord::size).reversed());
        return all;
    }

    private static double size(Moved moved) {
        return moved.before() == null ? 0 : Math.abs(Math.log(moved.after() / moved.before()));
    }
}
