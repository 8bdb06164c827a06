package org.tallywright.jobs;

import java.util.UUID;
import org.tallywright.shared.Refused;

/** A job by name, for the pages and rules of other modules. */
public record JobRef(UUID id, String number, String title, JobState state, UUID clientId, UUID siteId) {
    public boolean isClosed() {
        return state == JobState.CLOSED;
    }

    /** Refuses what a closed job does not take. */
    public JobRef guardOpen() {
        if (isClosed()) {
            throw new Refused(Job.CLOSED_SENTENCE);
        }
        return this;
    }

    static JobRef of(Job job) {
        return new JobRef(job.id(), job.number(), job.title(), job.state(), job.clientId(), job.siteId());
    }
}
