package org.tallywright.calibration;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.tallywright.calibration.engine.Calibration;
import org.tallywright.calibration.engine.HoursOnNoLine;
import org.tallywright.calibration.engine.JobForecast;
import org.tallywright.calibration.engine.Observation;
import org.tallywright.calibration.engine.PlannedTask;

/**
 * Judges every finished job by what was known before it was accepted, the starting rates of then among it. A job whose own work and everything known before it are
 * as they were when it was judged last keeps that judgement: closing one job asks for one forecast. In a shop of a thousand
 * finished tasks and more a fit serves until a fiftieth more is known, so a forecast may know a little less than it could.
 */
final class LookBack {
    private static final int LARGE = 1000;
    private static final double MORE = 1.02;
    private static final int STEPS = 40;

    private final Past past;
    private final List<LocalDate> closed = new ArrayList<>();
    private final List<Integer> tasksUpTo = new ArrayList<>();
    private final Map<String, Judged> kept;
    private final LocalDate changed;
    private final Set<String> same;
    private final Consumer<String> step;
    private @Nullable Fitted fitted;
    private LocalDate fittedOn = LocalDate.MAX;

    private LookBack(Past past, Past before, List<Judged> judged, Consumer<String> step) {
        this.past = past;
        this.step = step;
        kept = new HashMap<>();
        judged.forEach(job -> kept.put(job.key(), job));
        same = new HashSet<>();
        Map<String, List<Observation>> tasks = past.byJob();
        changed = compare(past, tasks, before, same);
        int count = 0;
        for (PastJob job : past.jobs()) {
            count += tasks.getOrDefault(job.key(), List.of()).size();
            closed.add(job.closedOn());
            tasksUpTo.add(count);
        }
    }

    /**
     * @param before what the calibration in use was made from, and {@code judged} then; both may be empty
     * @return the oldest first
     */
    static List<Judged> record(Past past, Past before, List<Judged> judged, Consumer<String> step) {
        boolean sameRates = past.ratesBefore().equals(before.ratesBefore());
        return new LookBack(past, sameRates ? before : Past.nothing(), judged, step).all();
    }

    /** The earliest close of a job that is not as it was, was not there, or is no longer there; the others' keys in {@code same}. */
    private static LocalDate compare(Past now, Map<String, List<Observation>> tasks, Past before, Set<String> same) {
        Map<String, List<Observation>> tasksBefore = before.byJob();
        Map<String, PastJob> jobsBefore = new HashMap<>();
        before.jobs().forEach(job -> jobsBefore.put(job.key(), job));
        LocalDate earliest = LocalDate.MAX;
        for (PastJob job : now.jobs()) {
            PastJob was = jobsBefore.remove(job.key());
            if (job.equals(was) && Objects.equals(tasks.get(job.key()), tasksBefore.get(job.key()))) {
                same.add(job.key());
            } else {
                earliest = earlier(earliest, job.closedOn());
                earliest = was == null ? earliest : earlier(earliest, was.closedOn());
            }
        }
        for (PastJob gone : jobsBefore.values()) {
            earliest = earlier(earliest, gone.closedOn());
        }
        return earliest;
    }

    private static LocalDate earlier(LocalDate one, LocalDate other) {
        return one.isBefore(other) ? one : other;
    }

    private List<Judged> all() {
        Map<String, Judged> judged = new HashMap<>();
        List<PastJob> jobs = past.jobs().stream()
                .filter(job -> job.estimate() > 0 && job.actual() > 0)
                .sorted(Comparator.comparing(PastJob::knownBy).thenComparing(PastJob::closedOn))
                .toList();
        int n = 0;
        for (PastJob job : jobs) {
            n++;
            Judged known = kept.get(job.key());
            if (known != null && same.contains(job.key()) && !changed.isBefore(job.knownBy())) {
                judged.put(job.key(), known);
                continue;
            }
            if (n % Math.max(1, jobs.size() / STEPS) == 0) {
                step.accept("Looking back: job " + n + " of " + jobs.size());
            }
            judged.put(job.key(), judge(job, judged.values()));
        }
        return past.jobs().stream()
                .map(job -> judged.get(job.key()))
                .filter(Objects::nonNull)
                .toList();
    }

    private Judged judge(PastJob job, Iterable<Judged> earlier) {
        Fitted then = before(job.knownBy(), earlier);
        Calibration model = job.imported() ? then.model().with(HoursOnNoLine.none()) : then.model();
        List<PlannedTask> planned = past.planned(job, job.knownBy());
        JobForecast said = model.jobForecast(planned);
        return new Judged(
                job.key(),
                job.number(),
                job.title(),
                job.imported(),
                job.closedOn(),
                then.past().jobs().size(),
                then.past().tasks().size(),
                planned.stream().mapToDouble(PlannedTask::estimateHours).sum(),
                HoursRange.of(said.hours()),
                said.unwidened().probabilityBelow(job.actual()),
                job.actual(),
                job.bidHours(),
                job.labourRate(),
                job.atBid(),
                job.atStages());
    }

    /** A fit on jobs closed before that day, and on nothing later. */
    private Fitted before(LocalDate day, Iterable<Judged> earlier) {
        Fitted last = fitted;
        if (last != null && serves(last, day)) {
            return last;
        }
        List<Judged> judged = new ArrayList<>();
        earlier.forEach(job -> {
            if (job.closedOn().isBefore(day)) {
                judged.add(job);
            }
        });
        judged.sort(Comparator.comparing(Judged::closedOn).thenComparing(Judged::key));
        Fitted fresh = Fitted.of(null, past.before(day), day, judged);
        fitted = fresh;
        fittedOn = day;
        return fresh;
    }

    private boolean serves(Fitted last, LocalDate day) {
        int tasks = tasksBefore(day);
        return day.equals(fittedOn)
                || (day.isAfter(fittedOn)
                        && past.sameRates(fittedOn, day)
                        && tasks >= LARGE
                        && tasks <= MORE * last.past().tasks().size());
    }

    /** Of the jobs closed before that day. */
    private int tasksBefore(LocalDate day) {
        int at = Collections.binarySearch(closed, day.minusDays(1), (one, other) -> one.isAfter(other) ? 1 : -1);
        int jobs = -at - 1;
        return jobs == 0 ? 0 : tasksUpTo.get(jobs - 1);
    }
}
