package org.tallywright.estimates;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.tallywright.estimates.EstimateSheet.BidRow;
import org.tallywright.shared.Money;

/**
 * How the bids of a job stand, in a word and a price: for the owner only.
 *
 * @param bid where it opens
 * @param words "Bid A, accepted", "Bid A and 2 changes", "Bid B, open"
 * @param price before tax; of all that was agreed where something was
 */
public record BidMark(UUID bid, String words, Money price) {

    static Optional<BidMark> of(List<BidRow> bids) {
        List<BidRow> agreed =
                bids.stream().filter(b -> b.standing() == BidStanding.ACCEPTED).toList();
        return agreed.isEmpty() ? out(bids) : Optional.of(agreed(agreed));
    }

    private static BidMark agreed(List<BidRow> agreed) {
        BidRow first =
                agreed.stream().filter(b -> b.kind() == BidKind.BID).findFirst().orElse(agreed.get(0));
        int changes = agreed.size() - 1;
        String after = changes == 0 ? ", accepted" : changes == 1 ? " and a change" : " and " + changes + " changes";
        return new BidMark(
                first.id(),
                name(first) + after,
                Money.sum(agreed.stream().map(BidRow::price).toList()));
    }

    private static Optional<BidMark> out(List<BidRow> bids) {
        return bids.isEmpty() ? Optional.empty() : Optional.of(last(bids.get(bids.size() - 1)));
    }

    private static BidMark last(BidRow bid) {
        return new BidMark(bid.id(), name(bid) + ", " + bid.standing().word(), bid.price());
    }

    /** "Bid A" of "26-014 A". */
    private static String name(BidRow bid) {
        return bid.kind().label() + " " + bid.number().substring(bid.number().indexOf(' ') + 1);
    }
}
