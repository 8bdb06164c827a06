package org.tallywright.bench.calibration;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.tallywright.bench.Figures;
import org.tallywright.calibration.engine.Calibration;
import org.tallywright.calibration.engine.Distribution;
import org.tallywright.calibration.engine.PastForecast;
import org.tallywright.calibration.engine.RunningForecast;
import org.tallywright.calibration.engine.RunningJob;
import org.tallywright.calibration.engine.RunningTask;
import org.tallywright.calibration.engine.SelfCalibration;

/**
 * Jobs of 8 and more tasks at the first finished task with 25, 50 and 75 % of the estimated hours done, forecast by the
 * engine's standard settings and corrected as in the product, by the forecasts at all three stages of jobs finished before that
 * day.
 */
final class RunningJobs {

    private static final int TASKS = 8;

    private RunningJobs() {}

    /** A job at one stage: the day of it, the day of its end, its rows split. */
    private record Status(LocalDate day, LocalDate end, List<PastTask> done, List<PastTask> open) {

        double actual(List<PastTask> tasks) {
            return tasks.stream().mapToDouble(PastTask::actual).sum();
        }

        double estimate(List<PastTask> tasks) {
            return tasks.stream().mapToDouble(PastTask::estimate).sum();
        }

        RunningJob job() {
            return new RunningJob(
                    done.get(0).job(),
                    PastTasks.observations(done),
                    open.stream()
                            .map(task -> new RunningTask(task.planned(), 0))
                            .toList(),
                    0);
        }
    }

    /** What came of a forecast, on the day the job ended. */
    private record Ended(LocalDate end, PastForecast forecast) {}

    /** A job at a stage with the fit of its quarter; empty before the burn-in is over. */
    private record Asked(int percent, Status status, Calibration fit) {}

    static Figures measure(PastTasks past, QuarterlyFits fits) {
        List<Asked> asked = new ArrayList<>();
        for (int percent : new int[] {25, 50, 75}) {
            for (Status status : statuses(past, percent / 100.0)) {
                fits.on(status.day()).ifPresent(fit -> asked.add(new Asked(percent, status, fit)));
            }
        }
        List<Ended> ended = asked.stream()
                .map(RunningJobs::ended)
                .sorted(Comparator.comparing(Ended::end))
                .toList();
        Figures figures = new Figures();
        Figures coverage = new Figures();
        for (int percent : new int[] {25, 50, 75}) {
            stage(
                    percent,
                    asked.stream().filter(one -> one.percent() == percent).toList(),
                    ended,
                    figures,
                    coverage);
        }
        return figures.addAll(coverage);
    }

    /** A forecast before correction needs no record. */
    private static Ended ended(Asked asked) {
        Status status = asked.status();
        double left = status.actual(status.open());
        return new Ended(
                status.end(),
                PastForecast.running(
                        asked.percent() / 100.0,
                        asked.fit().runningForecast(status.job()).unwidenedRemaining(),
                        left));
    }

    private static void stage(int percent, List<Asked> asked, List<Ended> ended, Figures figures, Figures coverage) {
        Score score = new Score(3);
        double error = 0;
        double byIndex = 0;
        double restAsPlanned = 0;
        for (Asked one : asked) {
            Status status = one.status();
            SelfCalibration record = SelfCalibration.from(ended.stream()
                    .filter(job -> job.end().isBefore(status.day()))
                    .map(Ended::forecast)
                    .toList());
            RunningForecast forecast = one.fit().with(record).runningForecast(status.job());
            double actual = status.actual(status.done()) + status.actual(status.open());
            double budget = status.estimate(status.done()) + status.estimate(status.open());
            Distribution end = forecast.atCompletion();
            score.add(end, budget, actual);
            error += Math.abs(end.median() / actual - 1);
            byIndex += Math.abs(budget * status.actual(status.done()) / status.estimate(status.done()) / actual - 1);
            restAsPlanned += Math.abs((status.actual(status.done()) + status.estimate(status.open())) / actual - 1);
        }
        figures.add("inprogress_mape_" + percent, error / score.count(), "share");
        coverage.add("inprogress_central80_" + percent, score.central80(), "share")
                .add("inprogress_p80_" + percent, score.p80(), "share")
                .add("inprogress_jobs_" + percent, score.count(), "jobs")
                .add("inprogress_cpi_mape_" + percent, byIndex / score.count(), "share")
                .add("inprogress_plan_mape_" + percent, restAsPlanned / score.count(), "share");
    }

    /** Every job's status at a share, in the order of the days; jobs whose last task reaches the share have none. */
    private static List<Status> statuses(PastTasks past, double share) {
        List<Status> statuses = new ArrayList<>();
        for (List<PastTask> tasks : past.byJob().values()) {
            if (tasks.size() < TASKS) {
                continue;
            }
            double total = tasks.stream().mapToDouble(PastTask::estimate).sum();
            double sum = 0;
            int done = 0;
            while (sum < share * total * (1 - 1e-12)) {
                sum += tasks.get(done++).estimate();
            }
            if (done < tasks.size()) {
                statuses.add(new Status(
                        tasks.get(done - 1).known(),
                        tasks.get(tasks.size() - 1).known(),
                        tasks.subList(0, done),
                        tasks.subList(done, tasks.size())));
            }
        }
        statuses.sort(Comparator.comparing(Status::day));
        return statuses;
    }
}
