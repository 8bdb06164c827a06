package org.tallywright.calibration.engine;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;

/**
 * How far the price of a material moves from one purchase to the next, shrunk to all of the shop's purchases and those to a
 * starting value.
 *
 * <pre>
 *   d = ln( unit price / unit price of the purchase before ), cut at +-ln 2
 *   shop:      s0^2 = ( k x start^2 + sum of all d^2 ) / ( k + all steps )
 *   material:  s^2  = ( k x s0^2 + sum of its d^2 ) / ( k + its steps ),   k = 4 steps, start = 0.05
 * </pre>
 *
 * <p>s is the sd of ln(price paid / price of the estimate), a pure number; the estimate's price is the last one known, so one
 * step lies between the two. About zero, not about the mean step: a steady rise counts as scatter. The starting value of 5 % is
 * common practice, no source. n = 0: the starting value; one or few steps: shrunk to it. A price of zero makes no step.
 */
public final class PriceScatter {

    /** Sd of ln(price) before any purchase. */
    public static final double STARTING = 0.05;

    private static final double PSEUDO_STEPS = 4;

    private final Map<String, Steps> byMaterial = new HashMap<>();
    private final double shop;

    private PriceScatter(Collection<Steps> all) {
        double squares = 0;
        long count = 0;
        for (Steps one : all) {
            byMaterial.merge(one.material(), one, Steps::with);
            squares += one.squares();
            count += one.count();
        }
        shop = shrunk(STARTING * STARTING, squares, count);
    }

    /**
     * Steps between consecutive purchases of one material.
     *
     * @param count how many, 0 or more
     * @param squares sum of d^2
     */
    public record Steps(String material, int count, double squares) {
        private Steps with(Steps other) {
            return new Steps(material, count + other.count, squares + other.squares);
        }
    }

    public static PriceScatter learn(Collection<Steps> all) {
        return new PriceScatter(all);
    }

    private static double shrunk(double before, double squares, long count) {
        return (PSEUDO_STEPS * before + squares) / (PSEUDO_STEPS + count);
    }

    /** Sd of ln(price paid / price of the estimate). */
    public double of(String material) {
        Steps own = byMaterial.get(material);
        return Math.sqrt(own == null ? shop : shrunk(shop, own.squares(), own.count()));
    }

    /** Own steps behind it. */
    public int steps(String material) {
        Steps own = byMaterial.get(material);
        return own == null ? 0 : own.count();
    }
}
