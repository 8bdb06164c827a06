package org.tallywright.estimates;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Refused;

/** Makes the frozen lines of a bid from the working ones, and refuses what cannot be offered. */
@Component
class OfferMaker {
    Offer make(UUID job, WorkingSum working, IssueBid said) {
        EstimateSheet next = working.sheet().next();
        if (next.isEmpty()) {
            throw new Refused(
                    working.sheet().sold()
                            ? "Every line is in an accepted bid or in a change order that is out. Add what changes first."
                            : "There is nothing to offer yet. Add tasks or material first.");
        }
        if (!working.everything().equals(said.seenTotal())) {
            throw new Refused("The sum changed while this page was open: it was " + said.seenTotal() + ", now it is "
                    + working.everything() + ". Look at it again, then issue.");
        }
        return priced(job, working, said.title(), "The price comes to nothing.");
    }

    /**
     * An option about to be issued.
     *
     * @param id of the row that it becomes
     */
    record Optional(UUID id, OptionSum source, Offer offer) {}

    List<Optional> options(UUID job, WorkingSum working) {
        return working.options().stream()
                .map(option -> {
                    String name = option.option().name();
                    Offer offer = priced(
                            job, option.working(), name, "The option \u201c" + name + "\u201d comes to nothing.");
                    return new Optional(Ids.next(), option, offer);
                })
                .toList();
    }

    private static Offer priced(UUID job, WorkingSum working, String title, String nothing) {
        EstimateSheet next = working.sheet().next();
        PriceBasis basis = working.basis()
                .orElseThrow(() -> new Refused("There is no rate for the hours yet. Set it under Rates first."));
        PriceSum sum = PriceSum.of(basis);
        Limits.check(sum);
        if (!sum.price().isPositive()) {
            throw new Refused(nothing + " Look at hours, rates and material first.");
        }
        return new Offer(
                title,
                working.offered(),
                basis,
                sum,
                next.tasks().stream().map(t -> task(job, t)).toList(),
                next.materials().stream().map(OfferMaker::material).toList(),
                next.others().stream()
                        .map(o -> new BidOther(o.sort().code(), o.description(), o.amount(), o.id()))
                        .toList(),
                pieces(next));
    }

    private static Set<String> pieces(EstimateSheet next) {
        return Stream.concat(
                        next.tasks().stream().map(EstimateSheet.TaskRow::pieceName),
                        next.materials().stream().map(EstimateSheet.MaterialRow::pieceName))
                .collect(Collectors.toSet());
    }

    private static BidTask task(UUID job, EstimateSheet.TaskRow t) {
        return new BidTask(
                job,
                t.id(),
                t.pieceName(),
                t.stageName(),
                t.name(),
                t.quantity(),
                t.unit(),
                t.startingUnitHours(),
                t.unitHours(),
                t.hours());
    }

    private static BidMaterial material(EstimateSheet.MaterialRow m) {
        return new BidMaterial(
                m.materialId(),
                m.name(),
                m.unit(),
                m.net(),
                m.yield(),
                m.purchase(),
                m.price(),
                m.freight(),
                m.amount(),
                m.id());
    }
}
