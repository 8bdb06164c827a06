package org.tallywright.cutting;

import java.util.List;

/**
 * Which part comes out of which bar.
 *
 * @param unplaced parts by their place in the list asked for, once for each that fits nowhere
 * @param bound no plan can buy less than this length; 0 where none was worked out
 */
public record BarPlan(List<Bar> bars, List<Integer> unplaced, Answer answer, long bound) {
    /**
     * @param stock its place in the list of stock
     * @param parts by their place in the list asked for, in the order of cutting
     * @param left what remains behind the last cut, usable length only
     */
    public record Bar(int stock, List<Integer> parts, long left) {}
}
