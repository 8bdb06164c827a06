package org.tallywright.measuring;

import java.util.UUID;

/**
 * Something measured on one job.
 *
 * @param <D> what a form of it says
 */
interface OfJob<D> {
    UUID id();

    UUID jobId();

    int version();

    D details();

    /** A changed reading carries the name of the person who wrote it. */
    void change(D details, UUID by);
}
