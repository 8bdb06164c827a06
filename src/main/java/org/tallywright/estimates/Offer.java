package org.tallywright.estimates;

import java.util.List;
import java.util.Set;

/**
 * What is about to be issued: its lines, how it was priced, and the price.
 *
 * @param pieces names of the pieces that a line belongs to
 */
record Offer(
        String title,
        EstimateRates rates,
        PriceBasis basis,
        PriceSum sum,
        List<BidTask> tasks,
        List<BidMaterial> materials,
        List<BidOther> others,
        Set<String> pieces) {}
