package org.tallywright.costing.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.tallywright.costing.JobFigures;
import org.tallywright.costing.TaskFigures;
import org.tallywright.costing.web.ReviewPage.Stage;
import org.tallywright.costing.web.ReviewPage.Sum;
import org.tallywright.costing.web.ReviewPage.Task;

/** A job's tasks by stage, planned beside logged. */
record TaskTable(JobFigures figures, String base) {
    private static final int WORST = 3;

    List<Stage> stages() {
        Map<String, List<TaskFigures>> byStage = new LinkedHashMap<>();
        figures.tasks()
                .forEach(task -> byStage.computeIfAbsent(task.stage(), s -> new ArrayList<>())
                        .add(task));
        return byStage.entrySet().stream()
                .map(stage -> new Stage(
                        stage.getKey(), stage.getValue().stream().map(this::row).toList(), sum(stage.getValue(), 0)))
                .toList();
    }

    /** With the hours on no task. */
    Sum sum() {
        int onTasks = figures.tasks().stream().mapToInt(TaskFigures::minutes).sum();
        return sum(figures.tasks(), figures.actual().minutes() - onTasks);
    }

    private static Sum sum(List<TaskFigures> tasks, int besides) {
        int planned = tasks.stream().mapToInt(TaskTable::planned).sum();
        int logged = besides + tasks.stream().mapToInt(TaskFigures::minutes).sum();
        return new Sum(
                Written.hours(planned), Written.hours(logged), Written.moreHours(logged - planned), logged > planned);
    }

    /** The lines that ran over most, in hours. */
    List<Task> worst() {
        return figures.tasks().stream()
                .filter(task -> task.minutes() > planned(task))
                .sorted(Comparator.comparingInt((TaskFigures task) -> planned(task) - task.minutes()))
                .limit(WORST)
                .map(this::row)
                .toList();
    }

    private static int planned(TaskFigures task) {
        TaskFigures.Planned plan = task.planned();
        return plan == null ? 0 : plan.minutes();
    }

    private Task row(TaskFigures task) {
        int planned = planned(task);
        int difference = task.minutes() - planned;
        boolean judged = task.settled() || difference > 0;
        return new Task(
                task.name(),
                task.piece(),
                task.planned() == null ? Written.NONE : Written.hours(planned),
                Written.hours(task.minutes()),
                judged ? Written.moreHours(difference) : "",
                judged ? "" : Written.hours(task.remainingMinutes()),
                judged ? Written.morePercent(planned, difference) : "",
                difference > 0,
                quantity(task),
                state(task),
                new Links(base).task(task));
    }

    private static String quantity(TaskFigures task) {
        TaskFigures.Planned plan = task.planned();
        String done = task.quantityDone() == null ? "" : Written.quantity(task.quantityDone());
        String was = plan == null ? "" : Written.quantity(plan.quantity());
        String both = was.isEmpty() || done.isEmpty() || was.equals(done)
                ? was + (was.equals(done) ? "" : done)
                : was + " → " + done;
        return both.isEmpty() ? Written.NONE : both + " " + task.unit();
    }

    private static String state(TaskFigures task) {
        if (task.planned() == null) {
            return "unlisted";
        }
        if (task.state().equals("dropped")) {
            return "dropped";
        }
        if (!task.settled()) {
            return "open";
        }
        return task.quantityConfirmed() ? "" : "uncounted";
    }
}
