package org.tallywright.estimates;

import java.util.Collection;
import java.util.UUID;
import org.tallywright.shared.Money;

/** Says what an estimate's hours may really come to, and its cost; given by the module that learns from finished work. */
public interface HoursOutlook {
    /** @param lines what would be offered next; at least one task */
    HoursSaid of(UUID job, EstimateSheet lines);

    /**
     * For the owner: with the hours, the cost.
     *
     * @param hour what an hour costs; its amount is known
     * @param hours what {@link #of} says of the same lines
     */
    CostSaid cost(EstimateSheet lines, LabourRate hour, Money overhead, HoursSaid hours);

    /**
     * Makes the job's price at a confidence from now on.
     *
     * @param percent 50, 80 or 90; 0 for the named percentage of the estimate instead
     */
    void choose(UUID job, int percent, UUID by);

    /** A bid was issued from these lines, in the same transaction: keep what is said of it today. */
    void issued(UUID bid, UUID job, EstimateSheet lines);

    /** The client took options with a bid, in the same transaction: keep what is said today of all tasks that were agreed. */
    void agreed(UUID bid, Collection<UUID> tasks);
}
