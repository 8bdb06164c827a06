package org.tallywright.calibration;

import java.time.Duration;

/** Runs work that no page waits for. */
public interface Background {
    void later(Runnable work);

    /** The same again and again, the first time after that long. */
    void every(Duration step, Runnable work);
}
