package org.tallywright.calibration;

import java.time.LocalDate;

/**
 * What was said of a finished job on the day its accepted bid was issued, as it was kept then, and what came of it.
 *
 * @param hours as said
 * @param probability where the real hours fell in it before the record widened it, 0 to 1
 * @param actual all hours of the job but those on tasks of accepted change orders, which the bid did not speak of
 */
record AtBid(LocalDate on, HoursRange hours, double probability, double actual) {
    boolean inside() {
        return hours.holds(actual);
    }
}
