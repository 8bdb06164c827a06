package org.tallywright.calibration.engine;

import java.util.Collection;
import java.util.EnumMap;
import java.util.Map;
import org.tallywright.calibration.engine.model.NormalTable;

/**
 * Corrects forecasts of totals by what came of the shop's own stored ones: widens where they were too sure, and moves the
 * remaining hours of running jobs where they were too high or too low.
 *
 * <pre>
 *   z = Phi^-1(where the actual fell), cut at +-3;   d = w sum z/(10 + m);   c = max(1, sqrt((10 + sum (z - d)^2)/(10 + m)))
 *   w = 1/(1 + e^(2 - L)),   L = sum over jobs of z d' - d'^2/2,   d' = sum z/(10 + m) of the jobs that ended before it
 *   hours -> e^(d s) median x (hours/median)^c,   s = (ln q.9 - ln q.1)/2.563, separately for each stage of a job
 * </pre>
 *
 * <p>Between the stages at 0, 25, 50 and 75 % done, d and c are on a straight line from one to the next, so that no finished
 * task makes a jump; beyond 75 % they stay.
 *
 * <p>m = number of finished jobs with a forecast at that stage; c is a pure number of 1 or more, d a number of sds. At bid time
 * d = 0. L is how much better, in nats, N(d', 1) foretold each z than N(0, 1) did: a shift of the shop's own past must have
 * paid for itself, against odds of e^2 (about 7) to 1, before it is trusted. m = 0: nothing changes; few: ten pseudo-jobs hold c near 1
 * and d near 0. Only jobs finished before the new forecast may be given, in the order in which they ended, each with its
 * forecast before correction. Source: src/docs/calibration.md, after Dawid's probability integral transform and prequential
 * likelihood.
 */
public final class SelfCalibration {

    private static final double PSEUDO_JOBS = 10;
    private static final double FARTHEST = 3;
    private static final double AGAINST_A_SHIFT = 2;
    private static final Correction NONE = new Correction(0, 1);

    private final Map<PastForecast.Stage, Correction> corrections = new EnumMap<>(PastForecast.Stage.class);

    private record Correction(double shift, double factor) {}

    private SelfCalibration() {}

    /** No record yet. */
    public static SelfCalibration none() {
        return new SelfCalibration();
    }

    /** @param past in the order in which the jobs ended */
    public static SelfCalibration from(Collection<PastForecast> past) {
        SelfCalibration result = new SelfCalibration();
        for (PastForecast.Stage stage : PastForecast.Stage.values()) {
            double[] z = past.stream()
                    .filter(forecast -> forecast.stage() == stage)
                    .mapToDouble(forecast -> score(forecast.probability()))
                    .toArray();
            result.corrections.put(stage, correction(z, stage != PastForecast.Stage.AT_BID));
        }
        return result;
    }

    private static Correction correction(double[] z, boolean moves) {
        double sum = 0;
        double evidence = 0;
        for (int m = 0; m < z.length; m++) {
            double before = sum / (PSEUDO_JOBS + m);
            evidence += z[m] * before - before * before / 2;
            sum += z[m];
        }
        double trust = moves ? 1 / (1 + Math.exp(AGAINST_A_SHIFT - evidence)) : 0;
        double shift = trust * sum / (PSEUDO_JOBS + z.length);
        double squares = PSEUDO_JOBS;
        for (double each : z) {
            squares += (each - shift) * (each - shift);
        }
        return new Correction(shift, Math.max(1, Math.sqrt(squares / (PSEUDO_JOBS + z.length))));
    }

    private static double score(double probability) {
        double p = Math.max(1e-6, Math.min(1 - 1e-6, probability));
        return Math.max(-FARTHEST, Math.min(FARTHEST, NormalTable.quantile(p)));
    }

    /** The factor on the log scale, 1 = as wide as it is. */
    public double factor(PastForecast.Stage stage) {
        return corrections.getOrDefault(stage, NONE).factor();
    }

    /** How many of its own sds a forecast is moved on the log scale; below 0: to fewer hours. */
    public double shift(PastForecast.Stage stage) {
        return corrections.getOrDefault(stage, NONE).shift();
    }

    /** Hours still to come of a job with that share of its estimated hours done. */
    Distribution corrected(double shareDone, Distribution hours) {
        Correction here = at(shareDone);
        return hours.moved(here.shift()).widened(here.factor());
    }

    private Correction at(double shareDone) {
        PastForecast.Stage[] stages = PastForecast.Stage.values();
        double place = Math.max(0, Math.min(stages.length - 1.0, shareDone * stages.length));
        int from = (int) Math.min(stages.length - 2.0, place);
        double beyond = place - from;
        PastForecast.Stage one = stages[from];
        PastForecast.Stage next = stages[from + 1];
        return new Correction(
                (1 - beyond) * shift(one) + beyond * shift(next), (1 - beyond) * factor(one) + beyond * factor(next));
    }
}
