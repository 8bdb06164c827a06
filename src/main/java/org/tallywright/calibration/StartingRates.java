package org.tallywright.calibration;

import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.tallywright.catalog.StartingRateChanged;

/** The past is measured against the starting rates: with a new one it is measured again, whoever changed it and where. */
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
}
