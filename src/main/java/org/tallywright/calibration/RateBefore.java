package org.tallywright.calibration;

import java.time.LocalDate;

/**
 * A starting rate that was in force once.
 *
 * @param unitHours person-hours per unit
 * @param until the day on which another took its place
 */
record RateBefore(double unitHours, LocalDate until) {}
