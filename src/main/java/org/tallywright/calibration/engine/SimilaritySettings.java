package org.tallywright.calibration.engine;

/**
 * How much a past task says about a new one in the top layer.
 *
 * @param width sd of the kernel on ln(estimate)
 * @param otherKind factor for a past task of another kind, 0 to 1
 * @param otherWorker factor for a past task by other people, 0 to 1
 * @param halfLifeDays age at which a past task counts half
 * @param baseTasks how many past tasks the base model's forecast is worth; infinite = the base model alone
 * @param caution similar tasks worth s in all count s/(s + caution) of that: the base model has learnt from the same tasks, and few
 *     of them must not be heard twice
 */
public record SimilaritySettings(
        double width, double otherKind, double otherWorker, double halfLifeDays, double baseTasks, double caution) {

    public static SimilaritySettings standard() {
        return new SimilaritySettings(0.5, 0.05, 0.25, 365, 4, 1);
    }

    /** No top layer: every forecast is the base model's. */
    public static SimilaritySettings none() {
        return new SimilaritySettings(0.5, 0.05, 0.25, 365, Double.POSITIVE_INFINITY, 0);
    }

    boolean used() {
        return !Double.isInfinite(baseTasks);
    }
}
