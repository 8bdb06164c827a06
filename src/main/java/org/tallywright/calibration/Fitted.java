package org.tallywright.calibration;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.tallywright.calibration.engine.Calibration;
import org.tallywright.calibration.engine.CalibrationSettings;
import org.tallywright.calibration.engine.Calibrator;
import org.tallywright.calibration.engine.HoursOnNoLine;
import org.tallywright.calibration.engine.JobForecast;
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
 */
record Fitted(@Nullable UUID id, Past past, Calibration model, HoursOnNoLine onNoLine) {
    static final CalibrationSettings SETTINGS = CalibrationSettings.standard();

    /** Size of a task, in hours, to state a rate for where the shop has no task of its own. */
    private static final double USUAL_SIZE = 2;

    static Fitted of(@Nullable UUID id, Past past, LocalDate asOf, List<Judged> record) {
        HoursOnNoLine onNoLine = past.onNoLine();
        SelfCalibration own = SelfCalibration.from(
                record.stream().flatMap(job -> job.forecasts().stream()).toList());
        Calibration model =
                Calibrator.fit(past.tasks(), SETTINGS, asOf).with(onNoLine).with(own);
        return new Fitted(id, past, model, onNoLine);
    }

    double rateOf(UUID kind, double otherwise) {
        return past.rates().getOrDefault(kind, otherwise);
    }

    int jobsBehind(UUID kind) {
        Set<String> jobs = new TreeSet<>();
        past.tasks().stream()
                .filter(task -> task.kind().equals(kind.toString()))
                .forEach(task -> jobs.add(task.job()));
        return jobs.size();
    }

    Figures figures() {
        ModelFigures fit = model.figures();
        return new Figures(
                fit.tasks(),
                past.jobs().size(),
                fit.level(),
                fit.slope(),
                fit.residualSd(),
                fit.kindSd(),
                fit.workerSd(),
                fit.jobSd(),
                past.rates().keySet().stream().map(this::rate).toList(),
                onNoLine.shareByClass(),
                onNoLine.share().mean(),
                onNoLine.startingShare(),
                model.notes().stream().map(Fitted::noted).toList(),
                model.copiedHours().stream()
                        .map(c -> new Figures.Copied(UUID.fromString(c.worker()), c.tasks(), c.equal(), c.suspicious()))
                        .toList());
    }

    private Figures.KindRate rate(UUID kind) {
        double starting = rateOf(kind, 1);
        double size = size(kind.toString());
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

    private double size(String kind) {
        double[] sizes = past.tasks().stream()
                .filter(task -> task.kind().equals(kind))
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

    /** Every finished job, forecast from what was known before it; the oldest first. */
    static List<Judged> record(Past past, Consumer<String> step) {
        List<Judged> record = new ArrayList<>();
        int n = 0;
        for (PastJob job : past.jobs()) {
            n++;
            step.accept("Looking back: job " + n + " of " + past.jobs().size());
            if (job.estimate() > 0 && job.actual() > 0) {
                record.add(judge(past, job, record));
            }
        }
        return record;
    }

    private static Judged judge(Past past, PastJob job, List<Judged> earlier) {
        Past known = past.before(job.knownBy());
        List<Judged> judged = earlier.stream()
                .filter(j -> j.closedOn().isBefore(job.knownBy()))
                .toList();
        Fitted then = of(null, known, job.knownBy(), judged);
        Calibration model = job.imported() ? then.model.with(HoursOnNoLine.none()) : then.model;
        JobForecast said = model.jobForecast(job.planned());
        return new Judged(
                job.key(),
                job.number(),
                job.title(),
                job.imported(),
                job.closedOn(),
                known.jobs().size(),
                known.tasks().size(),
                job.estimate(),
                HoursRange.of(said.hours()),
                said.unwidened().probabilityBelow(job.actual()),
                job.actual(),
                job.bidHours(),
                job.labourRate(),
                job.atBid(),
                job.atStages());
    }

    /** Middle value of some hours. */
    static double middle(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }
}
