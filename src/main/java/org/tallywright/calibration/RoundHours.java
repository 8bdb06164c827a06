package org.tallywright.calibration;

import org.tallywright.shared.Hours;

/** Forecast hours as a person reads them: to 5 minutes below an hour, a quarter below ten, whole hours above. */
public final class RoundHours {
    private RoundHours() {}

    public static Hours of(double hours) {
        double size = Math.abs(hours);
        int minutes = size < 1 ? 5 : size < 10 ? 15 : 60;
        return Hours.ofMinutes(Math.toIntExact(Math.round(hours * 60 / minutes) * minutes));
    }
}
