package org.tallywright.calibration;

/** Runs work that no page waits for. */
public interface Background {
    void later(Runnable work);
}
