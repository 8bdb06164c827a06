package org.tallywright.calibration;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.tallywright.calibration.WorkRows.TaskRow;
import org.tallywright.calibration.engine.Observation;
import org.tallywright.calibration.engine.PlannedTask;
import org.tallywright.calibration.engine.RunningForecast;
import org.tallywright.calibration.engine.RunningJob;
import org.tallywright.calibration.engine.RunningTask;
import org.tallywright.calibration.engine.WorkerShare;

/** Looks at a running job as it stood at the end of a day, with one calibration. */
@Component
class RunningLook {
    private final WorkRows rows;
    private final Remembered<RunningForecast> remembered = new Remembered<>();

    RunningLook(WorkRows rows) {
        this.rows = rows;
    }

    /**
     * @param open tasks not done by then
     * @param work hours logged by then
     */
    record Look(
            Fitted fitted,
            List<TaskRow> tasks,
            List<TaskRow> open,
            JobWork work,
            RunningJob job,
            RunningForecast said) {
        boolean isOpen(TaskRow task) {
            return open.contains(task);
        }

        /** What each task took, or may come to on the mean. */
        Map<UUID, Forecaster.TaskNow> now() {
            Map<UUID, Forecaster.TaskNow> all = new LinkedHashMap<>();
            tasks.forEach(task -> all.put(task.id(), new Forecaster.TaskNow(task.name(), true, work.hours(task.id()))));
            for (int i = 0; i < open.size(); i++) {
                TaskRow task = open.get(i);
                double mean = said.openTasks().get(i).mean();
                all.put(task.id(), new Forecaster.TaskNow(task.name(), false, mean));
            }
            return all;
        }
    }

    /** Empty for a job without tasks. */
    Optional<Look> at(UUID job, LocalDate asOf, Fitted fitted) {
        List<TaskRow> tasks = rows.known(rows.tasksOf(job), fitted.model().conditions());
        if (tasks.isEmpty()) {
            return Optional.empty();
        }
        JobWork work = new JobWork(tasks, rows.hoursOf(job, asOf));
        List<TaskRow> open = tasks.stream().filter(task -> !isDone(task, asOf)).toList();
        Set<String> openIds = new LinkedHashSet<>();
        open.forEach(task -> openIds.add(task.id().toString()));
        List<Observation> finished = work.finished().stream()
                .filter(task -> !openIds.contains(task.task()))
                .map(task -> task.rebased(fitted.rateOf(UUID.fromString(task.kind()), task.startingUnitHours())
                        / task.startingUnitHours()))
                .toList();
        double onNoLine = work.otherHours().values().stream()
                .mapToDouble(Double::doubleValue)
                .sum();
        List<RunningTask> left = open.stream()
                .map(task -> new RunningTask(planned(fitted, task), work.hours(task.id())))
                .toList();
        RunningJob asked = new RunningJob(job.toString(), finished, left, onNoLine);
        RunningForecast said =
                remembered.of(fitted.id(), asked, () -> fitted.model().runningForecast(asked));
        return Optional.of(new Look(fitted, tasks, open, work, asked, said));
    }

    private static boolean isDone(TaskRow task, LocalDate asOf) {
        LocalDate done = task.doneOn();
        return task.state().equals("done") && done != null && !done.isAfter(asOf);
    }

    /** At the rate the calibration was measured against, which is the catalogue's unless it changed since. */
    static PlannedTask planned(Fitted fitted, TaskRow task) {
        UUID who = task.assignedTo();
        return new PlannedTask(
                task.id().toString(),
                task.kind().toString(),
                who == null ? List.of() : WorkerShare.alone(who.toString()),
                task.quantity().doubleValue()
                        * fitted.rateOf(task.kind(), task.rate().doubleValue()),
                task.conditions());
    }
}
