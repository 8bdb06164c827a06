package org.tallywright.calibration.engine;

/**
 * Choices of job totals.
 *
 * @param draws number of draws, a multiple of 200
 * @param seed fixed seed, so that two page loads agree
 * @param residualClip finished tasks of a running job speak up to this many sds
 * @param blendUntil share of a running job done until which the forecast of bid time fades out; 0 = at once
 * @param baseShare how much of a running job's forecast is then the base model's alone, the rest being that with similar tasks
 */
public record TotalSettings(int draws, long seed, double residualClip, double blendUntil, double baseShare) {

    public static TotalSettings standard() {
        return new TotalSettings(2000, 20_260_101L, 2.5, 0.25, 0.5);
    }

    public TotalSettings withSeed(long other) {
        return new TotalSettings(draws, other, residualClip, blendUntil, baseShare);
    }

    public TotalSettings withBlendUntil(double share) {
        return new TotalSettings(draws, seed, residualClip, share, baseShare);
    }

    public TotalSettings withBaseShare(double share) {
        return new TotalSettings(draws, seed, residualClip, blendUntil, share);
    }
}
