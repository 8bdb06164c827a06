package org.tallywright.takeoff;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.calibration.YieldBook;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.shared.Quantity;

/**
 * One material to buy for a job, in its own unit.
 *
 * @param net in the finished work, all of it
 * @param charge what it costs the job; the estimate follows it
 * @param buy in whole purchase units; nothing where stock and offcuts do
 * @param how in words: how many sheets, bars of which lengths, board feet with their range
 * @param layoutYield of this layout in whole percent: in the work / used; null where nothing was laid out
 * @param expected what the shop's own finished jobs say
 * @param quality proved, searched or coarse, in words
 * @param notices what somebody should know before buying
 * @param offcuts that are used
 */
public record BuyLine(
        MaterialCard material,
        Quantity net,
        Charge charge,
        Quantity buy,
        List<String> how,
        @Nullable Integer layoutYield,
        YieldBook.Expected expected,
        String quality,
        List<String> notices,
        List<Drawing> drawings,
        List<Offcut> offcuts,
        Wanted wanted) {
    /** An offcut of the shop that is cut up for this job; its size, when it was kept and what was noted. */
    public record Offcut(UUID id, String words, boolean held) {}

    /** What the shop should write down so that the parts can be laid out. */
    public enum Wanted {
        NOTHING,
        /** The lengths it is sold in. */
        LENGTHS,
        /** How it comes at all. */
        FORM
    }

    /** As fine as one counts when buying. */
    public String netShown() {
        return net.amount()
                .setScale(2, java.math.RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }
}
