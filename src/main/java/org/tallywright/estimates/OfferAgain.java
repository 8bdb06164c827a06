package org.tallywright.estimates;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobDesk;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;

/**
 * Takes the lines of an option that the client left out into the next change order. Hours are paid at today's wages as those of
 * any offer; material that was at the catalogue's price is at the catalogue's price of today, and a price typed by hand stays.
 */
@Service
public class OfferAgain {
    private final JobDesk jobs;
    private final EstimatePricer pricer;
    private final EstimateOptions options;
    private final MaterialLines materials;
    private final EstimateMaterials catalogue;
    private final OfferedWork work;
    private final ShopClock clock;

    OfferAgain(
            JobDesk jobs,
            EstimatePricer pricer,
            EstimateOptions options,
            MaterialLines materials,
            EstimateMaterials catalogue,
            OfferedWork work,
            ShopClock clock) {
        this.jobs = jobs;
        this.pricer = pricer;
        this.options = options;
        this.materials = materials;
        this.catalogue = catalogue;
        this.work = work;
        this.clock = clock;
    }

    /**
     * The same again is a repeat.
     *
     * @return the option's name, for the change order
     * @throws Refused where the client has not decided about it, took it or another one of its group, or another one is offered again
     */
    @Transactional
    public String offer(UUID job, UUID id, UUID by) {
        jobs.holdOpen(job, by);
        List<OptionRow> all = pricer.optionsOf(job);
        OptionRow row =
                all.stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow(() -> new NotHere("option"));
        if (!row.fate().equals(OptionRow.DECLINED)) {
            throw new Refused("Only an option that the client left out is offered again.");
        }
        all.stream().filter(row::excludes).findFirst().ifPresent(other -> {
            throw new Refused("\u201c" + other.name() + "\u201d is taken or offered already, and both are one of \u201c"
                    + row.oneOf() + "\u201d. Write what comes and what goes as lines of a change order.");
        });
        EstimateOption option = options.findById(id).orElseThrow(() -> new NotHere("option"));
        option.lines().stream()
                .map(OptionLine::materialId)
                .flatMap(line -> Optional.ofNullable(line).flatMap(materials::findById).stream())
                .forEach(this::reprice);
        work.offer(job, option.taskIds(), by, option.name() + " is offered again");
        option.free();
        return option.name();
    }

    private void reprice(MaterialLine line) {
        EstimateMaterials.Facts now =
                catalogue.find(line.materialId(), clock.today()).orElse(null);
        if (now != null && now.price() != null) {
            line.reprice(now.price(), now.purchaseStep());
        }
    }
}
