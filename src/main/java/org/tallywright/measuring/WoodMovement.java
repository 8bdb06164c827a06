package org.tallywright.measuring;

/**
 * How much a solid part grows (or shrinks, below nothing) across the grain when its moisture changes. Source: Wood
 * Handbook, FPL-GTR-190 chapter 13. Between 6 and 14 percent equation 13-2, {@code width x coefficient x change};
 * outside, up to 30 percent, equation 13-3 from the shrinkage of the species. Lengthwise movement is left out: it is
 * small in straight-grained wood.
 */
public final class WoodMovement {
    public static final double LEAST_MOISTURE = 6;
    public static final double MOST_MOISTURE = 14;
    public static final double FIBRE_SATURATION = 30;
    /** A pin meter, plus or minus about 19 times in 20: common practice, no source. */
    public static final double METER_GOOD_TO_PERCENT = 1;

    private WoodMovement() {}

    /** Whether both moistures lie where equation 13-2 holds. */
    public static boolean isLinear(double from, double to) {
        return Math.min(from, to) >= LEAST_MOISTURE && Math.max(from, to) <= MOST_MOISTURE;
    }

    /** In the unit of {@code width}; moistures in percent, 0 to 30. */
    public static double across(double width, Species species, Cut cut, double from, double to) {
        return isLinear(from, to)
                ? byCoefficient(width, species.coefficient(cut), from, to)
                : byShrinkage(width, species.shrinkagePercent(cut), from, to);
    }

    static double byCoefficient(double width, double coefficient, double from, double to) {
        return width * coefficient * (to - from);
    }

    static double byShrinkage(double width, double shrinkagePercent, double from, double to) {
        double top = Math.min(to, FIBRE_SATURATION);
        double start = Math.min(from, FIBRE_SATURATION);
        return width * (top - start) / (30 * 100 / shrinkagePercent - 30 + start);
    }

    /** As {@link #across}, with the doubt of both moistures carried through by the slope of the equation in use. */
    public static Reckoned across(double width, Species species, Cut cut, Reckoned from, Reckoned to) {
        boolean linear = isLinear(from.value(), to.value());
        double[] moistures = {from.value(), to.value()};
        double[] standard = {from.standard(), to.standard()};
        return Propagation.through(
                m -> linear
                        ? byCoefficient(width, species.coefficient(cut), m[0], m[1])
                        : byShrinkage(width, species.shrinkagePercent(cut), m[0], m[1]),
                moistures,
                standard);
    }
}
