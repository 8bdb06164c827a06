package org.tallywright.calibration.engine;

import java.util.List;
import java.util.Set;

/**
 * Yields of material, learnt as hours are: net quantity against what the starting yield promised.
 *
 * <pre>
 *   y = ln( net / (bought x starting yield) ) = level + material + condition + job + e
 * </pre>
 *
 * <p>The base model of hours with closer priors ({@link Priors#ofYields}), no slope, no weights and no top layer. A yield is a
 * pure number above 0; forecasts are cut at 1, because what comes from stock was bought for another job. n = 0: the
 * starting yield with an 80 % range of about +-20 %; n = 1 or few: shrunk to it. A purchase with nothing bought or nothing
 * used is left out and noted.
 */
public final class MaterialYields {

    private final Calibration calibration;

    private MaterialYields(Calibration calibration) {
        this.calibration = calibration;
    }

    public static MaterialYields learn(List<YieldObservation> observations) {
        List<Observation> asTasks =
                observations.stream().map(MaterialYields::asTask).toList();
        return new MaterialYields(Calibrator.fit(asTasks, CalibrationSettings.forYields()));
    }

    private static Observation asTask(YieldObservation seen) {
        List<WorkerShare> condition = seen.condition().isBlank() ? List.of() : WorkerShare.alone(seen.condition());
        return new Observation(
                seen.material(),
                seen.job(),
                seen.material(),
                condition,
                seen.bought(),
                seen.startingYield(),
                seen.net(),
                seen.date(),
                Set.of());
    }

    /** The yield of a material under a condition, either of them known or new. */
    public YieldForecast forecast(String material, String condition, double startingYield) {
        TaskForecast found = calibration.taskForecast(planned(material, condition, startingYield));
        double[] quantiles = found.hours().quantiles();
        for (int m = 0; m < quantiles.length; m++) {
            quantiles[m] = Math.min(1, quantiles[m]);
        }
        return new YieldForecast(Distribution.ofQuantiles(quantiles), found.observations(), found.startingShare());
    }

    /** Draws of the same yield, cut at 1; what all materials of one job share moves them together. */
    public Draws draws(String material, String condition, double startingYield) {
        double[] yields = calibration
                .lineDraws(List.of(planned(material, condition, startingYield)), new double[] {1})
                .values();
        for (int d = 0; d < yields.length; d++) {
            yields[d] = Math.min(1, yields[d]);
        }
        return Draws.of(yields);
    }

    private static PlannedTask planned(String material, String condition, double startingYield) {
        List<WorkerShare> people = condition.isBlank() ? List.of() : WorkerShare.alone(condition);
        return new PlannedTask(material, material, people, startingYield, Set.of());
    }

    /** Own purchases of a material behind its yield. */
    public int observationsOf(String material) {
        return calibration.observationsOf(material);
    }

    /** What was left out, and why. */
    public List<Note> notes() {
        return calibration.notes();
    }
}
