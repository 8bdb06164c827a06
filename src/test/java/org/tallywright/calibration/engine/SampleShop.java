package org.tallywright.calibration.engine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;

/** Invented finished tasks. */
final class SampleShop {

    static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    private SampleShop() {}

    static Observation task(String id, String job, String kind, String worker, double estimate, double actual) {
        List<WorkerShare> workers = worker.isBlank() ? List.of() : WorkerShare.alone(worker);
        return new Observation(id, job, kind, workers, 1, estimate, actual, DAY, Set.of());
    }

    /** Tasks of a shop that takes a quarter longer than it estimates, with a spread of 30 %. */
    static List<Observation> shop(int tasks, int kinds, int workers, long seed) {
        Random random = new Random(seed);
        List<Observation> shop = new ArrayList<>();
        for (int i = 0; i < tasks; i++) {
            double estimate = Math.exp(random.nextGaussian() * 0.8 + 1.2);
            double actual = estimate * Math.exp(0.22 + 0.3 * random.nextGaussian());
            shop.add(new Observation(
                    "t" + i,
                    "j" + i / 8,
                    "k" + random.nextInt(kinds),
                    WorkerShare.alone("w" + random.nextInt(workers)),
                    1,
                    estimate,
                    actual,
                    DAY.plusDays(i),
                    Set.of()));
        }
        return shop;
    }

    static Calibration fit(List<Observation> tasks) {
        return Calibrator.fit(tasks, CalibrationSettings.standard());
    }
}
