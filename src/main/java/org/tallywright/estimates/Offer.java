package org.tallywright.estimates;

import java.util.List;

/** What is about to be issued: its lines, how it was priced, and the price. */
record Offer(
        String title,
        EstimateRates rates,
        PriceBasis basis,
        PriceSum sum,
        List<BidTask> tasks,
        List<BidMaterial> materials,
        List<BidOther> others) {}
