package org.tallywright.calibration.engine;

/**
 * Choices of job totals.
 *
 * @param draws number of draws, a multiple of 200
 * @param seed fixed seed, so that two page loads agree
 * @param residualClip finished tasks of a running job speak up to this many sds
 * @param blendUntil share of a running job done from which its forecast is the base model's alone; 0 = always
 */
public record TotalSettings(int draws, long seed, double residualClip, double blendUntil) {

    public static TotalSettings standard() {
        return new TotalSettings(2000, 20_260_101L, 2.5, 0.25);
    }

    public TotalSettings withSeed(long other) {
        return new TotalSettings(draws, other, residualClip, blendUntil);
    }

    public TotalSettings withBlendUntil(double share) {
        return new TotalSettings(draws, seed, residualClip, share);
    }
}
