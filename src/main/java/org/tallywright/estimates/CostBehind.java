package org.tallywright.estimates;

/**
 * What stands behind a drawn cost.
 *
 * @param draws how many
 * @param seed of the draws: the same lines give the same figures
 * @param jobs finished jobs behind the hours
 * @param startingPercent how much of the hours is still the starting rates
 * @param materials different materials of the lines that net / yield gives
 * @param yields of them with a finished job of their own behind the yield
 * @param priceSteps from one purchase of them to the next
 * @param laidOut lines of material that a layout gives
 * @param crewMatters whether people who cost differently share the hours
 * @param crewJobs finished jobs that say who really does them
 */
public record CostBehind(
        int draws,
        long seed,
        int jobs,
        int startingPercent,
        int materials,
        int yields,
        int priceSteps,
        int laidOut,
        boolean crewMatters,
        int crewJobs) {}
