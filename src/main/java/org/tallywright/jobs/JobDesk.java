package org.tallywright.jobs;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;

/** Opens jobs and moves them from lead to running or lost, and answers other modules what a job takes. */
@Service
public class JobDesk {
    private final JobGate gate;
    private final JobRefs refs;
    private final JobOpener opener;
    private final JobCloser closer;
    private final JobHistory history;
    private final ShopClock clock;

    JobDesk(JobGate gate, JobRefs refs, JobOpener opener, JobCloser closer, JobHistory history, ShopClock clock) {
        this.gate = gate;
        this.refs = refs;
        this.opener = opener;
        this.closer = closer;
        this.history = history;
        this.clock = clock;
    }

    /** A new job, a lead, with the next number of the year. The same id with the same details is a repeat. */
    @Transactional
    public JobRef open(UUID id, JobDetails details, UUID by) {
        return opener.open(id, details, by);
    }

    /** A new job with its client and site, all or nothing; the same again is a repeat. */
    @Transactional
    public JobRef open(Opening opening, UUID by) {
        return opener.open(opening, by);
    }

    /** Changes what is written about a job; the same details again are a repeat. */
    @Transactional
    public JobRef change(UUID jobId, int version, JobDetails details, UUID by) {
        Job job = gate.holdOpen(jobId, by);
        if (!job.details().equals(details)) {
            if (job.version() != version) {
                throw new Stale("job");
            }
            refs.guardSite(details);
            job.change(details);
        }
        return JobRef.of(job);
    }

    /** Work on a bid has begun. Nothing happens to a job that is past that. */
    @Transactional
    public void startBidding(UUID jobId, UUID by) {
        Job job = gate.holdOpen(jobId, by);
        if (job.state() == JobState.LEAD) {
            job.startBidding();
            history.job(jobId, JobState.LEAD.code(), job.state(), clock.today(), by, "");
        }
    }

    /**
     * The client said yes: the job runs. A running job stays as it is.
     *
     * @param by null when the client accepted by his link; the caller then names who acts in the trail
     */
    @Transactional
    public void award(UUID jobId, LocalDate on, @Nullable UUID by, String note) {
        Job job = by == null ? gate.hold(jobId) : gate.hold(jobId, by);
        job.guardOpen();
        if (job.state() != JobState.RUNNING) {
            String from = job.state().code();
            job.award(on);
            history.job(jobId, from, job.state(), on, by, note);
        }
    }

    /** The day that was promised, and the one that stands now. */
    public record Postponed(LocalDate from, LocalDate to) {}

    /**
     * An accepted change adds working days: the promised day moves by them, Saturdays and Sundays left out.
     *
     * @param by null when the client accepted by his link; the caller then names who acts in the trail
     * @return empty where no day was promised
     */
    @Transactional
    public Optional<Postponed> postpone(UUID jobId, int workingDays, @Nullable UUID by) {
        Job job = by == null ? gate.hold(jobId) : gate.hold(jobId, by);
        LocalDate promised = job.promisedOn();
        if (promised == null || workingDays == 0) {
            return Optional.empty();
        }
        LocalDate to = WorkingDays.after(promised, workingDays);
        job.promise(to);
        return Optional.of(new Postponed(promised, to));
    }

    /** The client said no, or never answered. */
    @Transactional
    public void lose(UUID jobId, String reason, UUID by) {
        Job job = gate.hold(jobId, by);
        if (job.state() != JobState.LOST) {
            String from = job.state().code();
            job.lose();
            history.job(jobId, from, job.state(), clock.today(), by, reason);
        }
    }

    /**
     * Closes a running job and publishes {@link JobClosed} in the same transaction; a closed job stays as it is.
     *
     * @throws Refused while tasks or punch list items are open and nothing was said about them
     */
    @Transactional
    public void close(UUID jobId, Closing said, UUID by) {
        closer.close(gate.hold(jobId, by), said, by);
    }

    /** A closed job runs again, a lost one is back where it was. Publishes {@link JobReopened}. */
    @Transactional
    public void reopen(UUID jobId, String reason, UUID by) {
        closer.reopen(gate.hold(jobId, by), reason, by);
    }

    /** @throws NotHere for a number that no job has */
    @Transactional(readOnly = true)
    public JobRef find(String number) {
        return refs.find(number);
    }

    /** @throws NotHere for an id that no job has */
    @Transactional(readOnly = true)
    public JobRef get(UUID jobId) {
        return refs.get(jobId);
    }

    /** A closed job takes call-backs only. */
    @Transactional(readOnly = true)
    public boolean takesEntries(UUID jobId, HourClass hourClass) {
        return hourClass == HourClass.CALL_BACK || !get(jobId).isClosed();
    }

    /**
     * The same as a refusal, and the job stays as it is until the end of the caller's transaction: an entry and a
     * closing at the same time wait for each other.
     */
    @Transactional
    public void guardEntry(UUID jobId, HourClass hourClass) {
        JobState state = refs.holdState(jobId);
        if (hourClass != HourClass.CALL_BACK && state == JobState.CLOSED) {
            throw new Refused("The job is closed; it takes call-backs only. Reopen it to log other hours.");
        }
    }

    /** For writes of other modules to a job: one at a time, and refused when the job is closed. */
    @Transactional
    public JobRef holdOpen(UUID jobId, UUID by) {
        return JobRef.of(gate.holdOpen(jobId, by));
    }
}
