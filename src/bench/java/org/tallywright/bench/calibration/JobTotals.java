package org.tallywright.bench.calibration;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.tallywright.bench.Figures;
import org.tallywright.calibration.engine.Calibration;
import org.tallywright.calibration.engine.JobForecast;

/** Totals of jobs of 4 and more tasks, forecast at the start of the quarter of their first estimate. */
final class JobTotals {

    private static final int TASKS = 4;
    private static final int MANY_TASKS = 20;

    private JobTotals() {}

    static Figures measure(PastTasks past, QuarterlyFits fits) {
        Score score = new Score(2);
        Score large = new Score(2);
        for (List<PastTask> tasks : past.byJob().values()) {
            LocalDate first = tasks.stream()
                    .map(PastTask::estimated)
                    .min(LocalDate::compareTo)
                    .orElseThrow();
            if (tasks.size() < TASKS) {
                continue;
            }
            Optional<Calibration> fit = fits.on(first);
            if (fit.isPresent()) {
                JobForecast forecast = fit.get()
                        .jobForecast(tasks.stream().map(PastTask::planned).toList());
                double estimate = tasks.stream().mapToDouble(PastTask::estimate).sum();
                double actual = tasks.stream().mapToDouble(PastTask::actual).sum();
                score.add(forecast.hours(), estimate, actual);
                if (tasks.size() >= MANY_TASKS) {
                    large.add(forecast.hours(), estimate, actual);
                }
            }
        }
        return new Figures()
                .add("jobs_scored", score.count(), "jobs")
                .add("job_central80", score.central80(), "share")
                .add("job_p80", score.p80(), "share")
                .add("job_p90", score.p90(), "share")
                .add("job20_scored", large.count(), "jobs")
                .add("job20_central80", large.central80(), "share")
                .add("job_crps_rel", score.crpsRelative(), "share of estimate")
                .add("job_crps_hours", score.crps(), "hours")
                .add("job_mean_bias", score.meanBias(), "share");
    }
}
