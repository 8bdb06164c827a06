package org.tallywright.calibration;

import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.tallywright.catalog.StartingRateChanged;
import org.tallywright.catalog.TaskKindMerged;

/**
 * The past is measured against the starting rates of the catalogue's kinds: with a new rate, or two kinds counted as one, it is
 * measured again, whoever changed it and where.
 */
@Component
class StartingRates {
    private final Recalibration recalibration;

    StartingRates(Recalibration recalibration) {
        this.recalibration = recalibration;
    }

    @EventListener
    void on(StartingRateChanged changed) {
        recalibration.ask("New starting rate of \"" + changed.name() + "\": " + changed.unitHours() + " h for one "
                + changed.unit().label());
    }

    @EventListener
    void on(TaskKindMerged merged) {
        recalibration.ask("\"" + merged.name() + "\" " + (merged.apart() ? "no longer counted as \"" : "counted as \"")
                + merged.intoName() + "\"");
    }
}
