package org.tallywright.calibration.engine;

import java.time.LocalDate;
import java.util.List;

/**
 * Fits a calibration to a shop's finished tasks. The result is immutable and safe for several threads; the same observations,
 * settings, JDK and processor give the same figures, however many threads ask.
 */
public final class Calibrator {

    private Calibrator() {}

    /** Fits as of the day the last task was finished. */
    public static Calibration fit(List<Observation> observations, CalibrationSettings settings) {
        LocalDate last = observations.stream()
                .map(Observation::done)
                .max(LocalDate::compareTo)
                .orElse(LocalDate.EPOCH);
        return fit(observations, settings, last);
    }

    /**
     * Fits as of a day, from which ages are counted.
     *
     * @param observations finished tasks, of finished jobs and of running ones; only those known by that day
     */
    public static Calibration fit(List<Observation> observations, CalibrationSettings settings, LocalDate asOf) {
        LearntTasks learnt = LearntTasks.from(observations, settings);
        return new Calibration(learnt, BaseModel.fit(learnt, settings, asOf), asOf);
    }
}
