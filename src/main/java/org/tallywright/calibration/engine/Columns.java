package org.tallywright.calibration.engine;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * The columns and weights the base model is fitted to: ones, z = ln(estimate hours) - 2 where there is a slope, one column of 0
 * and 1 for each site condition with enough history; estimates in person-hours above 0. Without tasks all are empty.
 */
final class Columns {

    private static final double CENTRE = 2;

    private Columns() {}

    /** z of an estimate: the slope's column. */
    static double centred(double estimateHours) {
        return Math.log(estimateHours) - CENTRE;
    }

    /** Conditions with enough tasks and jobs on both sides, in alphabetical order; the others are off. */
    static List<String> conditions(List<Observation> tasks, int least) {
        Set<String> names = new TreeSet<>();
        tasks.forEach(task -> names.addAll(task.conditions()));
        names.removeIf(name -> !enough(tasks, name, true, least) || !enough(tasks, name, false, least));
        return List.copyOf(names);
    }

    private static boolean enough(List<Observation> tasks, String condition, boolean held, int least) {
        List<Observation> side = tasks.stream()
                .filter(task -> task.conditions().contains(condition) == held)
                .toList();
        return side.size() >= least
                && side.stream()
                                .map(Observation::job)
                                .distinct()
                                .limit(CalibrationSettings.CONDITION_JOBS)
                                .count()
                        == CalibrationSettings.CONDITION_JOBS;
    }

    static double[] weights(List<Observation> tasks, BaseSettings base, LocalDate asOf) {
        int n = tasks.size();
        double[] weight = new double[n];
        for (int i = 0; i < n; i++) {
            weight[i] = Math.pow(tasks.get(i).estimateHours(), base.weightExponent());
        }
        double cut = percentile95(weight);
        double sum = 0;
        for (int i = 0; i < n; i++) {
            weight[i] = Math.min(weight[i], cut);
            sum += weight[i];
        }
        for (int i = 0; i < n; i++) {
            weight[i] *= n / sum * decay(tasks.get(i).done(), asOf, base.halfLifeDays());
        }
        return weight;
    }

    static double decay(LocalDate done, LocalDate asOf, double halfLifeDays) {
        return Math.pow(0.5, Math.max(0, ChronoUnit.DAYS.between(done, asOf)) / halfLifeDays);
    }

    private static double percentile95(double[] values) {
        if (values.length == 0) {
            return 0;
        }
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double at = 0.95 * (sorted.length - 1);
        int below = (int) at;
        int above = Math.min(sorted.length - 1, below + 1);
        return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
    }

    static double[][] fixed(List<Observation> tasks, CalibrationSettings settings, List<String> conditions) {
        int slope = settings.base().slope() ? 1 : 0;
        double[][] fixed = new double[1 + slope + conditions.size()][tasks.size()];
        for (int i = 0; i < tasks.size(); i++) {
            Observation task = tasks.get(i);
            fixed[0][i] = 1;
            if (slope == 1) {
                fixed[1][i] = centred(task.estimateHours());
            }
            for (int c = 0; c < conditions.size(); c++) {
                fixed[1 + slope + c][i] = task.conditions().contains(conditions.get(c)) ? 1 : 0;
            }
        }
        return fixed;
    }

    static double[] fixedSd(CalibrationSettings settings, List<String> conditions) {
        int slope = settings.base().slope() ? 1 : 0;
        double[] sd = new double[1 + slope + conditions.size()];
        Arrays.fill(sd, settings.priors().conditionSd());
        sd[0] = settings.priors().levelSd();
        if (slope == 1) {
            sd[1] = settings.priors().slopeSd();
        }
        return sd;
    }
}
