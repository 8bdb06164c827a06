package org.tallywright.calibration;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.tallywright.calibration.engine.Calibration;
import org.tallywright.calibration.engine.CalibrationSettings;
import org.tallywright.calibration.engine.Calibrator;
import org.tallywright.calibration.engine.HoursOnNoLine;
import org.tallywright.calibration.engine.ModelFigures;
import org.tallywright.calibration.engine.Note;
import org.tallywright.calibration.engine.Observation;
import org.tallywright.calibration.engine.PlannedTask;
import org.tallywright.calibration.engine.SelfCalibration;
import org.tallywright.calibration.engine.TaskForecast;

/**
 * A calibration ready to be asked.
 *
 * @param id null where the shop has none yet: then everything is the starting rates
 * @param jobsByKind how many jobs each kind was done on
 */
record Fitted(
        @Nullable UUID id, Past past, Calibration model, HoursOnNoLine onNoLine, Map<String, Integer> jobsByKind) {
    /** Goes up when the same past would be judged in another way than before. */
    static final int ENGINE = 2;

    static final CalibrationSettings SETTINGS = CalibrationSettings.standard();

    /** Size of a task, in hours, to state a rate for where the shop has no task of its own. */
    private static final double USUAL_SIZE = 2;

    static Fitted of(@Nullable UUID id, Past past, LocalDate asOf, List<Judged> record) {
        HoursOnNoLine onNoLine = past.onNoLine();
        SelfCalibration own = SelfCalibration.from(
                record.stream().flatMap(job -> job.forecasts().stream()).toList());
        Calibration model =
                Calibrator.fit(past.tasks(), SETTINGS, asOf).with(onNoLine).with(own);
        return new Fitted(id, past, model, onNoLine, jobsByKind(past));
    }

    double rateOf(UUID kind, double otherwise) {
        return past.rates().getOrDefault(kind, otherwise);
    }

    int jobsBehind(UUID kind) {
        return jobsByKind.getOrDefault(kind.toString(), 0);
    }

    private static Map<String, Integer> jobsByKind(Past past) {
        Map<String, Set<String>> jobs = new HashMap<>();
        past.tasks()
                .forEach(task -> jobs.computeIfAbsent(task.kind(), kind -> new HashSet<>())
                        .add(task.job()));
        Map<String, Integer> counts = new HashMap<>();
        jobs.forEach((kind, of) -> counts.put(kind, of.size()));
        return counts;
    }

    Figures figures() {
        ModelFigures fit = model.figures();
        Map<String, List<Observation>> own = past.tasks().stream().collect(Collectors.groupingBy(Observation::kind));
        return new Figures(
                ENGINE,
                fit.tasks(),
                past.jobs().size(),
                fit.level(),
                fit.slope(),
                fit.residualSd(),
                fit.kindSd(),
                fit.workerSd(),
                fit.jobSd(),
                past.rates().keySet().stream()
                        .map(kind -> rate(kind, own.getOrDefault(kind.toString(), List.of())))
                        .toList(),
                onNoLine.shareByClass(),
                onNoLine.share().mean(),
                onNoLine.startingShare(),
                model.notes().stream().map(Fitted::noted).toList(),
                model.copiedHours().stream()
                        .map(c -> new Figures.Copied(UUID.fromString(c.worker()), c.tasks(), c.equal(), c.suspicious()))
                        .toList());
    }

    private Figures.KindRate rate(UUID kind, List<Observation> own) {
        double starting = rateOf(kind, 1);
        double size = size(own);
        TaskForecast said = model.taskForecast(PlannedTask.of("rate", kind.toString(), size));
        double perHour = starting / size;
        return new Figures.KindRate(
                kind,
                starting,
                size,
                said.observations(),
                jobsBehind(kind),
                said.hours().low80() * perHour,
                said.hours().median() * perHour,
                said.hours().high80() * perHour,
                said.startingShare());
    }

    private static double size(List<Observation> own) {
        double[] sizes = own.stream()
                .mapToDouble(Observation::estimateHours)
                .filter(hours -> hours > 0)
                .sorted()
                .toArray();
        return sizes.length == 0 ? USUAL_SIZE : sizes[(sizes.length - 1) / 2];
    }

    private static Figures.Noted noted(Note note) {
        String what = switch (note.treatment()) {
            case NO_ESTIMATE -> "left out: no quantity to compare with";
            case NO_HOURS -> "left out: no hours logged";
            case RAISED_TO_FEWEST -> "counted as three minutes";
            case RATIO_CUT -> "cut: more than twenty times off its starting rate";
        };
        return new Figures.Noted(note.observation().task(), note.observation().job(), what);
    }

    /** Middle value of some hours. */
    static double middle(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }
}
