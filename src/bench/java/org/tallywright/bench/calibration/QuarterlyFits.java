package org.tallywright.bench.calibration;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tallywright.calibration.engine.Calibration;
import org.tallywright.calibration.engine.CalibrationSettings;
import org.tallywright.calibration.engine.Calibrator;
import org.tallywright.calibration.engine.Observation;

/** Calibrations at the start of a quarter on what was known by then, each fitted once. */
final class QuarterlyFits {

    private final PastTasks past;
    private final CalibrationSettings settings;
    private final Map<LocalDate, Optional<Calibration>> fits = new HashMap<>();

    QuarterlyFits(PastTasks past, CalibrationSettings settings) {
        this.past = past;
        this.settings = settings;
    }

    /** The calibration of the quarter a day lies in; empty before the burn-in is over. */
    Optional<Calibration> on(LocalDate day) {
        LocalDate quarter = LocalDate.of(day.getYear(), (day.getMonthValue() - 1) / 3 * 3 + 1, 1);
        return fits.computeIfAbsent(quarter, start -> {
            List<Observation> known = past.knownBefore(start);
            return known.size() < Math.max(1, past.burnIn())
                    ? Optional.empty()
                    : Optional.of(Calibrator.fit(known, settings, start));
        });
    }
}
