package org.tallywright.takeoff;

import java.util.List;

/**
 * What a job needs bought.
 *
 * @param without parts that no material is chosen for
 */
public record BuyList(List<BuyLine> lines, List<String> without) {}
