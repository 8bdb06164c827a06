package org.tallywright.cutting;

import java.util.ArrayList;
import java.util.List;

/**
 * Bars with the pattern cut from each.
 *
 * @param missing parts that no bar took
 * @param bought length bought
 */
record BarPacking(List<Load> loads, int missing, long bought) {
    /** @param pattern how many of each length */
    record Load(int stock, int[] pattern) {}

    boolean isBetterThan(BarPacking other) {
        if (missing != other.missing) {
            return missing < other.missing;
        }
        return bought != other.bought ? bought < other.bought : loads.size() < other.loads.size();
    }

    BarPacking with(List<Load> more, int stillMissing, long moreBought) {
        List<Load> all = new ArrayList<>(loads);
        all.addAll(more);
        return new BarPacking(all, stillMissing, bought + moreBought);
    }
}
