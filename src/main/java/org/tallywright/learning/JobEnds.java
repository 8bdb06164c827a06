package org.tallywright.learning;

import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.tallywright.calibration.Recalibration;
import org.tallywright.daylog.HoursOfClosedJob;
import org.tallywright.jobs.JobClosed;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobReopened;

/** A closed job teaches, a reopened one no longer does until it is closed again; hours that come later teach as well. */
@Component
class JobEnds {
    private final Recalibration recalibration;
    private final JobDesk jobs;

    JobEnds(Recalibration recalibration, JobDesk jobs) {
        this.recalibration = recalibration;
        this.jobs = jobs;
    }

    @EventListener
    void on(JobClosed closed) {
        recalibration.ask("Job " + jobs.get(closed.jobId()).number() + " closed");
    }

    @EventListener
    void on(JobReopened reopened) {
        recalibration.ask("Job " + jobs.get(reopened.jobId()).number() + " reopened");
    }

    @EventListener
    void on(HoursOfClosedJob corrected) {
        recalibration.ask("Hours of job " + corrected.number() + " changed after it was closed");
    }
}
