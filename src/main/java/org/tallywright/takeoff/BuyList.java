package org.tallywright.takeoff;

import java.util.List;

/**
 * What a job needs bought.
 *
 * @param without parts that no material is chosen for
 * @param unused offcuts held for the job that no layout uses; no other job counts on them
 * @param stale pieces whose parts were taken off before a size, a setting or a formula changed
 */
public record BuyList(
        List<BuyLine> lines, List<String> without, List<BuyLine.Offcut> unused, List<PieceFacts.Fact> stale) {}
