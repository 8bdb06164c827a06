package org.tallywright.estimates;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A bid with its frozen lines and sums, as agreed. Holds cost and margin: never for the client, a helper or a lead.
 *
 * @param number as in "26-014 A"
 * @param option of an option: what it was copied from, which later offers copy again; else null
 * @param acceptedOn null for one that is not accepted
 */
public record AcceptedBid(
        UUID id,
        UUID jobId,
        BidKind kind,
        String number,
        String title,
        @Nullable UUID option,
        LocalDate issuedOn,
        LocalDate validUntil,
        @Nullable LocalDate acceptedOn,
        BidSums sums,
        List<BidTask> tasks,
        List<BidMaterial> materials,
        List<BidOther> others) {

    public AcceptedBid {
        tasks = List.copyOf(tasks);
        materials = List.copyOf(materials);
        others = List.copyOf(others);
    }
}
