package org.tallywright.estimates;

import java.util.UUID;

/** Says what an estimate's hours may really come to; given by the module that learns from finished work. */
public interface HoursOutlook {
    /** @param lines what would be offered next; at least one task */
    HoursSaid of(UUID job, EstimateSheet lines);

    /** A bid was issued from these lines, in the same transaction: keep what is said of it today. */
    void issued(UUID bid, UUID job, EstimateSheet lines);
}
