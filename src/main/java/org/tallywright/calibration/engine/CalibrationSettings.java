package org.tallywright.calibration.engine;

/**
 * Everything about a calibration that is a choice.
 *
 * @param priors beliefs before any data
 * @param base the base model
 * @param similarity the top layer
 * @param totals job totals and running jobs
 * @param limits what is believed of a single task
 */
public record CalibrationSettings(
        Priors priors, BaseSettings base, SimilaritySettings similarity, TotalSettings totals, Limits limits) {

    /** Jobs on each side of a site condition from which it may count. */
    public static final int CONDITION_JOBS = 3;

    private static final long YIELD_SEED = 20_260_102L;

    /** What a shop starts with. */
    public static CalibrationSettings standard() {
        return new CalibrationSettings(
                Priors.ofHours(),
                BaseSettings.standard(),
                SimilaritySettings.standard(),
                TotalSettings.standard(),
                Limits.standard());
    }

    /** For yields: no weights, no slope, no top layer, closer priors; draws of its own, so that no yield follows the hours. */
    public static CalibrationSettings forYields() {
        return standard()
                .withPriors(Priors.ofYields())
                .withBase(BaseSettings.plain())
                .withSimilarity(SimilaritySettings.none())
                .withTotals(TotalSettings.standard().withSeed(YIELD_SEED))
                .withLimits(new Limits(2, 0));
    }

    public CalibrationSettings withPriors(Priors other) {
        return new CalibrationSettings(other, base, similarity, totals, limits);
    }

    public CalibrationSettings withBase(BaseSettings other) {
        return new CalibrationSettings(priors, other, similarity, totals, limits);
    }

    public CalibrationSettings withSimilarity(SimilaritySettings other) {
        return new CalibrationSettings(priors, base, other, totals, limits);
    }

    public CalibrationSettings withTotals(TotalSettings other) {
        return new CalibrationSettings(priors, base, similarity, other, limits);
    }

    public CalibrationSettings withLimits(Limits other) {
        return new CalibrationSettings(priors, base, similarity, totals, other);
    }
}
