package org.tallywright.calibration;

import java.sql.Timestamp;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.calibration.WorkRows.TaskRow;
import org.tallywright.calibration.engine.Draws;
import org.tallywright.calibration.engine.EarnedValue;
import org.tallywright.calibration.engine.JobForecast;
import org.tallywright.calibration.engine.PlannedTask;
import org.tallywright.calibration.engine.RunningForecast;
import org.tallywright.calibration.engine.TaskForecast;
import org.tallywright.shared.ShopClock;

/** Forecasts planned tasks and running jobs with the calibration in use. Person-hours throughout. */
@Service
public class Forecaster {
    private final Shelf shelf;
    private final WorkRows rows;
    private final RunningLook look;
    private final RunningRows kept;
    private final JdbcClient jdbc;
    private final ShopClock clock;
    private final Remembered<JobForecast> jobs = new Remembered<>();

    Forecaster(Shelf shelf, WorkRows rows, RunningLook look, RunningRows kept, JdbcClient jdbc, ShopClock clock) {
        this.shelf = shelf;
        this.rows = rows;
        this.look = look;
        this.kept = kept;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /**
     * @param tasks finished tasks of the kind behind it
     * @param jobs jobs they were done on
     * @param startingPercent how much of it is still the starting rate
     */
    public record Line(HoursRange hours, int tasks, int jobs, int startingPercent) {}

    /**
     * The hours of some tasks of one job together, hours on no line included; never the sum of the lines.
     *
     * @param jobs finished jobs behind the calibration
     */
    public record Lines(Map<UUID, Line> lines, HoursRange total, int jobs, int startingPercent) {}

    @Transactional(readOnly = true)
    public Lines tasks(Collection<UUID> ids) {
        Fitted fitted = shelf.fitted();
        List<TaskRow> tasks = inOrder(fitted, ids);
        JobForecast said = forecast(fitted, planned(fitted, tasks));
        Map<UUID, Line> lines = new LinkedHashMap<>();
        for (int i = 0; i < tasks.size(); i++) {
            TaskForecast task = said.tasks().get(i);
            lines.put(
                    tasks.get(i).id(),
                    new Line(
                            HoursRange.of(task.hours()),
                            task.observations(),
                            fitted.jobsBehind(tasks.get(i).kind()),
                            percent(task.startingShare())));
        }
        return new Lines(
                lines, HoursRange.of(said.hours()), fitted.past().jobs().size(), percent(said.startingShare()));
    }

    private JobForecast forecast(Fitted fitted, List<PlannedTask> tasks) {
        return jobs.of(fitted.id(), tasks, () -> fitted.model().jobForecast(tasks));
    }

    /** All their hours together as draws, those of {@link #tasks}; none: no hours. */
    @Transactional(readOnly = true)
    Draws draws(Collection<UUID> ids) {
        Fitted fitted = shelf.fitted();
        return forecast(fitted, planned(fitted, inOrder(fitted, ids))).draws();
    }

    /** Which calibration is in use; empty where the shop has none yet. */
    @Transactional(readOnly = true)
    public Optional<UUID> calibration() {
        return Optional.ofNullable(shelf.fitted().id());
    }

    /**
     * Keeps what is said of a bid's hours on the day it is issued, to be judged when the job is finished. A bid without tasks says
     * nothing of hours.
     */
    @Transactional
    public void keep(UUID bid, UUID job, @Nullable Integer confidence, Collection<UUID> tasks) {
        Fitted fitted = shelf.fitted();
        JobForecast said = forecast(fitted, planned(fitted, inOrder(fitted, tasks)));
        if (said.hours().high80() <= 0) {
            return;
        }
        jdbc.sql("""
                        insert into bid_forecast (bid_id, job_id, calibration_id, made_at, seed, confidence, unwidened, hours)
                        values (?, ?, ?, ?, ?, ?, ?, ?) on conflict (bid_id) do nothing""")
                .param(bid)
                .param(job)
                .param(fitted.id())
                .param(Timestamp.from(clock.now()))
                .param(Fitted.SETTINGS.totals().seed())
                .param(confidence)
                .param(said.unwidened().quantiles())
                .param(said.hours().quantiles())
                .update();
    }

    /**
     * Keeps what is said of all that was agreed on the day of the yes, where options are among it; it is judged in place of what
     * was kept of the bid alone.
     */
    @Transactional
    public void keepAgreed(UUID bid, Collection<UUID> tasks) {
        Fitted fitted = shelf.fitted();
        JobForecast said = forecast(fitted, planned(fitted, inOrder(fitted, tasks)));
        if (said.hours().high80() <= 0) {
            return;
        }
        jdbc.sql("""
                        insert into agreed_forecast (bid_id, calibration_id, made_at, unwidened, hours)
                        values (?, ?, ?, ?, ?) on conflict (bid_id) do nothing""")
                .param(bid)
                .param(fitted.id())
                .param(Timestamp.from(clock.now()))
                .param(said.unwidened().quantiles())
                .param(said.hours().quantiles())
                .update();
    }

    /**
     * A task of a running job.
     *
     * @param hours what it took, or may come to on the mean
     */
    public record TaskNow(String name, boolean done, double hours) {}

    /**
     * @param atEnd all hours of the job when it is done
     * @param soFar all hours logged
     * @param shareDone share of the estimated hours that finished tasks hold, 0 to 1
     * @param pace how the job runs against its tasks' rates: 1.12 is 12 % over
     * @param onNoLine hours so far that no line names
     * @param withoutHours finished tasks that nobody logged on; nothing here counts them, for a blank is not zero hours
     * @param jobs finished jobs behind the calibration
     */
    public record Running(
            HoursRange atEnd,
            HoursRange left,
            double soFar,
            double shareDone,
            double pace,
            double onNoLine,
            int finished,
            int withoutHours,
            int open,
            int jobs,
            Earned earned,
            Map<UUID, TaskNow> tasks) {}

    /**
     * What was said of a running job at the end of a day, as it was kept then.
     *
     * @param calibration what it was said with; null: the starting rates, or one that is no longer kept
     * @param jobs finished jobs behind that calibration
     */
    public record Kept(
            LocalDate on,
            HoursRange atEnd,
            double soFar,
            double onNoLine,
            @Nullable UUID calibration,
            int jobs,
            Map<UUID, TaskNow> tasks) {}

    /**
     * Plain earned value, in estimated and logged hours. A task is earned when it is finished, all or nothing; a finished one that
     * nobody logged on is left out, as it is of the share done.
     *
     * @param budget BAC, estimated hours of all tasks
     * @param earned EV, estimated hours of the finished ones
     * @param actual AC, hours logged on the finished ones
     * @param index CPI = EV / AC; null before anything is finished
     * @param atEnd BAC / CPI
     * @param noise too few finished tasks for the index to mean anything
     */
    public record Earned(
            double budget,
            double earned,
            double actual,
            @Nullable Double index,
            @Nullable Double atEnd,
            boolean noise) {}

    /** Empty for a job without tasks. Looks at what was logged and finished up to that day. */
    @Transactional(readOnly = true)
    public Optional<Running> running(UUID job, LocalDate asOf) {
        return look.at(job, asOf, shelf.fitted()).map(Forecaster::running);
    }

    /** What was kept of a running job on that day, or last before it. */
    @Transactional(readOnly = true)
    public Optional<Kept> kept(UUID job, LocalDate day) {
        return kept.last(job, day);
    }

    /** The same as {@link #running(UUID, LocalDate)}, with the calibration of an earlier forecast; empty where that is gone. */
    @Transactional(readOnly = true)
    public Optional<Running> running(UUID job, LocalDate asOf, Kept then) {
        return shelf.fitted(then.calibration(), then.jobs())
                .flatMap(fitted -> look.at(job, asOf, fitted))
                .map(Forecaster::running);
    }

    /** Whether the calibration in use is another one than that of an earlier forecast. */
    @Transactional(readOnly = true)
    public boolean isNewerThan(Kept then) {
        return !Objects.equals(shelf.fitted().id(), then.calibration());
    }

    private static Running running(RunningLook.Look look) {
        RunningForecast said = look.said();
        return new Running(
                HoursRange.of(said.atCompletion()),
                HoursRange.of(said.remaining()),
                said.hoursSoFar(),
                said.shareDone(),
                said.pace(),
                look.job().hoursOnNoLine(),
                look.job().finished().size(),
                look.tasks().size() - look.open().size() - look.job().finished().size(),
                look.open().size(),
                look.fitted().past().jobs().size(),
                earned(look),
                look.now());
    }

    private static Earned earned(RunningLook.Look look) {
        double budget = 0;
        double earned = 0;
        double actual = 0;
        int finished = 0;
        for (TaskRow task : look.tasks()) {
            if (!look.isOpen(task) && look.work().hours(task.id()) <= 0) {
                continue;
            }
            budget += task.estimatedMinutes() / 60.0;
            if (!look.isOpen(task)) {
                earned += task.estimatedMinutes() / 60.0;
                actual += look.work().hours(task.id());
                finished++;
            }
        }
        if (budget <= 0) {
            return new Earned(0, 0, actual, null, null, true);
        }
        EarnedValue value = new EarnedValue(budget, 0, earned, actual);
        boolean any = earned > 0 && actual > 0;
        return new Earned(
                budget,
                earned,
                actual,
                any ? value.costIndex().orElseThrow() : null,
                any ? value.atCompletion().orElseThrow() : null,
                value.cpiIsNoise(finished));
    }

    private List<TaskRow> inOrder(Fitted fitted, Collection<UUID> ids) {
        Map<UUID, TaskRow> found = new LinkedHashMap<>();
        rows.known(rows.tasks(ids), fitted.model().conditions()).forEach(task -> found.put(task.id(), task));
        List<TaskRow> ordered = new ArrayList<>();
        for (UUID id : ids) {
            TaskRow task = found.get(id);
            if (task != null) {
                ordered.add(task);
            }
        }
        return ordered;
    }

    private static List<PlannedTask> planned(Fitted fitted, List<TaskRow> tasks) {
        return tasks.stream().map(task -> RunningLook.planned(fitted, task)).toList();
    }

    private static int percent(double share) {
        return (int) Math.round(100 * share);
    }
}
