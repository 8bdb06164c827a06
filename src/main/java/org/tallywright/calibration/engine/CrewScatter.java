package org.tallywright.calibration.engine;

import java.util.Collection;
import java.util.List;

/**
 * How far the shares of who really does the hours stray from those an estimate is priced with.
 *
 * <pre>
 *   share_i ~ p_i exp(s z_i), made to add up to 1;   to first order Var(share_i) = s^2 p_i^2 (1 - 2 p_i + sum p^2)
 *   s^2 = ( k x start^2 x V + sum over jobs of sum_i (share_i - p_i)^2 ) / ( k x V + sum over jobs of V_j )
 *   V_j = sum_i p_i^2 (1 - 2 p_i + sum p^2) of a job, V the mean of them;   k = 4 jobs, start = 0.4
 * </pre>
 *
 * <p>p are the planned shares (pure numbers that add up to 1), z independent standard normal. s = 0.4 moves a half to between 36
 * and 64 % four times in five: common practice, no source. n = 0: that; few jobs: shrunk to it; never more than 1.5. A job of one
 * person says nothing.
 */
public final class CrewScatter {

    private static final double STARTING = 0.4;
    private static final double PSEUDO_JOBS = 4;
    private static final double LARGEST = 1.5;

    private final double spread;
    private final int jobs;

    private CrewScatter(double spread, int jobs) {
        this.spread = spread;
        this.jobs = jobs;
    }

    /** One person of a finished job: the share he was priced with, and the share of the crew's hours he really did. */
    public record Share(double planned, double real) {}

    /** @param finished the crew of each finished job */
    public static CrewScatter learn(Collection<List<Share>> finished) {
        double squares = 0;
        double scale = 0;
        int jobs = 0;
        for (List<Share> crew : finished) {
            double size = scale(crew);
            if (size > 0) {
                scale += size;
                jobs++;
                for (Share share : crew) {
                    squares += (share.real() - share.planned()) * (share.real() - share.planned());
                }
            }
        }
        if (jobs == 0) {
            return new CrewScatter(STARTING, 0);
        }
        double before = PSEUDO_JOBS * scale / jobs;
        double variance = (before * STARTING * STARTING + squares) / (before + scale);
        return new CrewScatter(Math.min(LARGEST, Math.sqrt(variance)), jobs);
    }

    private static double scale(List<Share> crew) {
        double same = crew.stream().mapToDouble(s -> s.planned() * s.planned()).sum();
        double scale = 0;
        for (Share share : crew) {
            scale += share.planned() * share.planned() * (1 - 2 * share.planned() + same);
        }
        return scale > 1e-9 ? scale : 0;
    }

    /** s, a pure number above 0. */
    public double spread() {
        return spread;
    }

    /** Finished jobs of several people behind it. */
    public int jobs() {
        return jobs;
    }
}
