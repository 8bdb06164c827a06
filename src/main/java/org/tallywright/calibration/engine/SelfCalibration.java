package org.tallywright.calibration.engine;

import java.util.Collection;
import java.util.EnumMap;
import java.util.Map;
import org.tallywright.calibration.engine.model.NormalTable;

/**
 * Widens forecasts of totals where the shop's own stored forecasts turned out too sure.
 *
 * <pre>
 *   z = Phi^-1(where the actual fell), cut at +-3;   c = max(1, sqrt((10 + sum z^2)/(10 + m)))
 *   total -> median x (total/median)^c, separately for each stage of a job
 * </pre>
 *
 * <p>m = number of finished jobs with a forecast at that stage; c is a pure number of 1 or more. m = 0: c = 1, nothing changes;
 * few: ten pseudo-jobs hold c near 1. Only jobs finished before the new forecast may be given,
 * each with its forecast before widening. Source:
 * src/docs/calibration.md, after Dawid's probability integral transform.
 */
public final class SelfCalibration {

    private static final double PSEUDO_JOBS = 10;
    private static final double FARTHEST = 3;

    private final Map<PastForecast.Stage, Double> factors = new EnumMap<>(PastForecast.Stage.class);

    private SelfCalibration() {}

    /** No record yet. */
    public static SelfCalibration none() {
        return new SelfCalibration();
    }

    public static SelfCalibration from(Collection<PastForecast> past) {
        SelfCalibration result = new SelfCalibration();
        for (PastForecast.Stage stage : PastForecast.Stage.values()) {
            double sum = PSEUDO_JOBS;
            double count = PSEUDO_JOBS;
            for (PastForecast forecast : past) {
                if (forecast.stage() == stage) {
                    double z = score(forecast.probability());
                    sum += z * z;
                    count++;
                }
            }
            result.factors.put(stage, Math.max(1, Math.sqrt(sum / count)));
        }
        return result;
    }

    private static double score(double probability) {
        double p = Math.max(1e-6, Math.min(1 - 1e-6, probability));
        return Math.max(-FARTHEST, Math.min(FARTHEST, NormalTable.quantile(p)));
    }

    /** The factor on the log scale, 1 = trusted as it is. */
    public double factor(PastForecast.Stage stage) {
        return factors.getOrDefault(stage, 1.0);
    }
}
