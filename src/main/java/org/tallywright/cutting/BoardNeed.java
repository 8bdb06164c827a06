package org.tallywright.cutting;

import java.util.List;

/**
 * How much wood to buy as boards of random width and length, as length x width in square units; times the rough thickness
 * it is a volume.
 *
 * @param net of the parts, finished
 * @param likely half of the tries needed less
 * @param safe four tries in five needed no more
 * @param tries how many lots of boards were drawn
 * @param boards in the middling try
 * @param staves into how many boards side by side each part is split, in the order asked for; 1 for one board
 * @param unplaced parts too long for any board, by their place in the list
 */
public record BoardNeed(
        long net, long likely, long safe, int tries, int boards, List<Integer> staves, List<Integer> unplaced) {}
