package org.tallywright.jobs;

import java.util.UUID;
import org.springframework.stereotype.Component;
import org.tallywright.shared.NotHere;
import org.tallywright.trail.Trail;

/**
 * The way into a job for everything that writes: one writer at a time, and nothing into a closed job. The row is held
 * to the end of the transaction, which also makes a double submit wait for its first half.
 */
@Component
class JobGate {
    private final Jobs jobs;
    private final Trail trail;

    JobGate(Jobs jobs, Trail trail) {
        this.jobs = jobs;
        this.trail = trail;
    }

    Job hold(UUID jobId, UUID by) {
        trail.by(by);
        return hold(jobId);
    }

    Job hold(UUID jobId) {
        return jobs.hold(jobId).orElseThrow(() -> new NotHere("job"));
    }

    Job holdOpen(UUID jobId, UUID by) {
        Job job = hold(jobId, by);
        job.guardOpen();
        return job;
    }
}
