package org.tallywright.calibration;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.calibration.engine.Observation;
import org.tallywright.calibration.engine.PastForecast;
import org.tallywright.calibration.engine.SelfCalibration;
import org.tallywright.people.People;
import org.tallywright.shared.Money;

/** How good the shop's forecasts were: every finished job against what was known before it. Holds money: for the owner. */
@Service
public class TrackRecord {
    private static final int ENOUGH_TO_REPEAT = 6;

    /** The residual sd at its lower bound of 0.05, with room for rounding. */
    private static final double HARDLY_ANY = 0.051;

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
     * A finished job with a forecast kept from the day its bid was issued.
     *
     * @param on that day
     * @param said less the share of tasks dropped since
     * @param actual all its hours but those on tasks of later change orders and on dropped ones
     * @param droppedTasks tasks of the bid that were dropped afterwards, {@code droppedShare} of its hours at starting rates
     */
    public record BidLine(
            String number,
            String title,
            LocalDate on,
            HoursRange said,
            double actual,
            boolean inside,
            @Nullable Money result,
            int droppedTasks,
            double droppedShare) {}

    /**
     * What the bids themselves said.
     *
     * @param without finished jobs without a forecast kept from their bid
     * @param ranges null where no job has one
     * @param money results of the lines together; null where one is missing
     * @param widened the factor on the log scale by which new ranges are widened: 1 is not at all
     */
    public record Bids(
            List<BidLine> lines,
            int without,
            @Nullable RangeRecord ranges,
            @Nullable Money money,
            double widened) {}

    /**
     * What was said on the way, about a quarter, a half or three quarters done.
     *
     * @param wider how many times as wide the middle job's range of the hours still to come would be made now
     * @param shift sds by which such forecasts are moved now; below 0: to fewer hours
     */
    public record Stage(int percent, @Nullable RangeRecord ranges, double wider, double shift) {}

    /** @param money results of all bids together; null without one */
    public record Summary(RangeRecord ranges, @Nullable Money money, int bids) {}

    /** Mean share of hours of a class that no line named, per hour on lines. */
    public record OffLine(String hourClass, double share) {}

    /** @param jobs finished jobs behind it: kept here, with hours on their lines */
    public record OffLines(double share, double startingShare, int jobs, List<OffLine> classes) {}

    /** Somebody whose hours are the estimate to the minute more often than chance allows. */
    public record Copied(String name, int tasks, int equal) {}

    public record LeftOut(String key, String number, String reason) {}

    public record Kept(UUID id, String state, String why, String step, Instant at, boolean current, boolean underWay) {}

    /** @param smallTasks the smaller half of all tasks against the larger half; null below six tasks */
    public record Page(
            Bids bids,
            List<Stage> stages,
            List<Line> lines,
            @Nullable Summary summary,
            @Nullable OffLines offLines,
            @Nullable Trend smallTasks,
            List<Copied> copied,
            List<String> noted,
            List<LeftOut> leftOut,
            List<Kept> calibrations) {

        /** Whether any finished job has a forecast kept from the way there. */
        public boolean isSaidOnTheWay() {
            return stages.stream().anyMatch(stage -> stage.ranges() != null);
        }
    }

    @Transactional(readOnly = true)
    public Page page() {
        Optional<CalibrationRows.Kept> kept = shelf.kept();
        List<Line> lines = new ArrayList<>();
        kept.ifPresent(k -> k.record().forEach(job -> lines.add(0, line(job))));
        List<Judged> record = kept.map(CalibrationRows.Kept::record).orElse(List.of());
        SelfCalibration own = shelf.fitted().model().record();
        return new Page(
                bids(record, own),
                stages(record, own),
                lines,
                summary(record, lines),
                kept.map(k -> offLines(k, shelf.fitted().onNoLine().jobs())).orElse(null),
                kept.flatMap(k -> Trend.bySize(k.past().tasks())).orElse(null),
                kept.map(this::copied).orElse(List.of()),
                kept.map(TrackRecord::noted).orElse(List.of()),
                leftOut(),
                rows.listed().stream().map(TrackRecord::kept).toList());
    }

    private static Line line(Judged job) {
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
                job.bidHours(),
                result(job));
    }

    private static @Nullable Money result(Judged job) {
        Double bid = job.bidHours();
        BigDecimal rate = job.labourRate();
        return bid == null || rate == null ? null : Money.of(rate.multiply(BigDecimal.valueOf(bid - job.actual())));
    }

    private static Bids bids(List<Judged> record, SelfCalibration own) {
        List<BidLine> lines = new ArrayList<>();
        List<RangeRecord.Case> cases = new ArrayList<>();
        for (Judged job : record) {
            AtBid said = job.atBid();
            if (said != null) {
                cases.add(new RangeRecord.Case(said.hours(), said.actual()));
                lines.add(
                        0,
                        new BidLine(
                                job.number(),
                                job.title(),
                                said.on(),
                                said.hours(),
                                said.actual(),
                                said.inside(),
                                result(job),
                                said.dropped() == null ? 0 : said.dropped().tasks(),
                                said.dropped() == null ? 0 : said.dropped().share()));
            }
        }
        return new Bids(
                lines,
                record.size() - lines.size(),
                RangeRecord.of(cases).orElse(null),
                together(lines),
                own.factor(PastForecast.Stage.AT_BID));
    }

    private static @Nullable Money together(List<BidLine> lines) {
        List<Money> results =
                lines.stream().map(BidLine::result).filter(Objects::nonNull).toList();
        return results.isEmpty() || results.size() < lines.size() ? null : Money.sum(results);
    }

    private static List<Stage> stages(List<Judged> record, SelfCalibration own) {
        return List.of(stage(25, record, own), stage(50, record, own), stage(75, record, own));
    }

    private static Stage stage(int percent, List<Judged> record, SelfCalibration own) {
        List<RangeRecord.Case> cases = record.stream()
                .flatMap(job -> job.atStages().stream())
                .filter(said -> said.percent() == percent)
                .map(said -> new RangeRecord.Case(said.atEnd(), said.actual()))
                .toList();
        PastForecast.Stage stage = PastForecast.Stage.of(percent / 100.0);
        double wider = RangeRecord.of(left(percent, record))
                .map(ranges -> ranges.timesAsWide(own.factor(stage)))
                .orElse(1.0);
        return new Stage(percent, RangeRecord.of(cases).orElse(null), wider, own.shift(stage));
    }

    /** The same of the hours that were still to come: what is logged by then is no question of width. */
    private static List<RangeRecord.Case> left(int percent, List<Judged> record) {
        List<RangeRecord.Case> left = new ArrayList<>();
        for (Judged job : record) {
            for (AtStage said : job.atStages()) {
                Double soFar = said.soFar();
                if (said.percent() == percent && soFar != null && said.atEnd().median() > soFar) {
                    left.add(new RangeRecord.Case(said.atEnd().less(soFar), said.actual() - soFar));
                }
            }
        }
        return left;
    }

    private static @Nullable Summary summary(List<Judged> record, List<Line> lines) {
        List<Money> results =
                lines.stream().map(Line::result).filter(Objects::nonNull).toList();
        return RangeRecord.of(record.stream()
                        .map(job -> new RangeRecord.Case(job.hours(), job.actual()))
                        .toList())
                .map(ranges -> new Summary(ranges, results.isEmpty() ? null : Money.sum(results), results.size()))
                .orElse(null);
    }

    private static OffLines offLines(CalibrationRows.Kept kept, int jobs) {
        Figures figures = kept.figures();
        return new OffLines(
                figures.offLineShare(),
                figures.offLineStarting(),
                jobs,
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

    /** {@code 2 tasks of job 26-014 cut: ...}. Tasks that nobody logged on never reach the engine and are counted here. */
    private static List<String> noted(CalibrationRows.Kept kept) {
        Map<String, String> numbers = new HashMap<>();
        Map<String, Long> learnt =
                kept.past().tasks().stream().collect(Collectors.groupingBy(Observation::job, Collectors.counting()));
        Map<String, Integer> counts = new TreeMap<>();
        for (PastJob job : kept.past().jobs()) {
            numbers.put(job.key(), job.number());
            int blank = job.lines().size() - learnt.getOrDefault(job.key(), 0L).intValue();
            if (blank > 0) {
                counts.merge(" of job " + job.number() + " left out: no hours logged", blank, Integer::sum);
            }
        }
        kept.figures()
                .noted()
                .forEach(note -> counts.merge(
                        " of job " + numbers.getOrDefault(note.job(), "?") + " " + note.what(), 1, Integer::sum));
        List<String> words = new ArrayList<>();
        counts.forEach((what, count) -> words.add((count == 1 ? "1 task" : count + " tasks") + what + "."));
        if (kept.figures().tasks() >= ENOUGH_TO_REPEAT && kept.figures().residualSd() < HARDLY_ANY) {
            words.add(
                    "Like tasks took almost the same hours every time. Their range is narrow but never a point: nobody"
                            + " repeats a task that closely.");
        }
        return words;
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

    static Kept kept(CalibrationRows.Row row) {
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
}
