package org.tallywright.calibration;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.UUID;
import org.tallywright.calibration.WorkRows.HoursRow;
import org.tallywright.calibration.WorkRows.TaskRow;
import org.tallywright.calibration.engine.Observation;
import org.tallywright.calibration.engine.WorkerShare;

/** The tasks of one job with the hours logged on them, split into what belongs to a rate and what does not. */
final class JobWork {
    private final List<TaskRow> tasks;
    private final Map<UUID, Map<UUID, Integer>> onTask = new LinkedHashMap<>();
    private final Map<String, Double> other = new TreeMap<>();

    JobWork(List<TaskRow> tasks, List<HoursRow> hours) {
        this.tasks = tasks;
        tasks.forEach(task -> onTask.put(task.id(), new LinkedHashMap<>()));
        for (HoursRow row : hours) {
            Map<UUID, Integer> people = row.taskId() == null ? null : onTask.get(row.taskId());
            if (people != null && row.inRate()) {
                people.merge(row.personId(), row.minutes(), Integer::sum);
            } else {
                String name = row.taskId() == null && row.hourClass().equals("direct") ? "no task" : row.hourClass();
                other.merge(name, row.minutes() / 60.0, Double::sum);
            }
        }
    }

    /** Those that somebody logged on: a blank is not zero hours. */
    List<Observation> finished() {
        List<Observation> all = new ArrayList<>();
        for (TaskRow task : tasks) {
            if (task.state().equals("done") && hours(task.id()) > 0) {
                all.add(observation(task));
            }
        }
        return all;
    }

    private Observation observation(TaskRow task) {
        return new Observation(
                task.id().toString(),
                task.jobId().toString(),
                task.kind().toString(),
                shares(task.id()),
                task.done().doubleValue(),
                task.rate().doubleValue(),
                hours(task.id()),
                Objects.requireNonNull(task.doneOn()),
                task.conditions(),
                task.estimatedMinutes() > 0 ? task.estimatedMinutes() / 60.0 : null);
    }

    List<WorkerShare> shares(UUID task) {
        Map<String, Double> hours = new LinkedHashMap<>();
        people(task).forEach((person, minutes) -> hours.put(person.toString(), (double) minutes));
        return WorkerShare.byHours(hours);
    }

    /** In the hour classes that belong to a rate. */
    double hours(UUID task) {
        return people(task).values().stream().mapToInt(Integer::intValue).sum() / 60.0;
    }

    private Map<UUID, Integer> people(UUID task) {
        return onTask.getOrDefault(task, Map.of());
    }

    List<PastJob.Line> lines() {
        return tasks.stream()
                .map(task -> new PastJob.Line(
                        task.id().toString(),
                        task.kind().toString(),
                        task.planned(),
                        task.rate().doubleValue(),
                        task.conditions()))
                .toList();
    }

    double lineHours() {
        return onTask.keySet().stream().mapToDouble(this::hours).sum();
    }

    Map<String, Double> otherHours() {
        return other;
    }
}
