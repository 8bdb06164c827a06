package org.tallywright.cutting;

/**
 * What boards are like as they come, and what goes to waste on the way to parts.
 *
 * @param shortest boards are of any length from this to {@code longest}, likewise their width
 * @param endTrim cut off each end
 * @param edgeLoss taken off each edge until it is straight
 * @param roughLength added to each part's length, to be cut off later; likewise {@code roughWidth}
 * @param defects share of the length between the end trims that is cut out: knots, splits, sapwood; from 0 to under 1
 */
public record BoardRules(
        long shortest,
        long longest,
        long narrowest,
        long widest,
        long kerf,
        long endTrim,
        long edgeLoss,
        long roughLength,
        long roughWidth,
        double defects) {
    public BoardRules {
        if (shortest <= 0 || longest < shortest || narrowest <= 0 || widest < narrowest) {
            throw new IllegalArgumentException("boards have a length and a width above 0, the least first");
        }
        if (kerf < 0 || endTrim < 0 || edgeLoss < 0 || roughLength < 0 || roughWidth < 0) {
            throw new IllegalArgumentException("kerf, trim and losses are 0 or more");
        }
        if (!(defects >= 0 && defects < 1)) {
            throw new IllegalArgumentException("defects take a share from 0 to under 1");
        }
    }

    /** What a board of middling width gives between its edges. */
    long middlingWidth() {
        return (narrowest + widest) / 2 - 2 * edgeLoss;
    }
}
