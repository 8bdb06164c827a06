package org.tallywright.jobs;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;

/** The end of a job and its taking up again. */
@Component
class JobCloser {
    private final Jobs jobs;
    private final Tasks tasks;
    private final PunchItems punchItems;
    private final JobHistory history;
    private final ShopClock clock;
    private final ApplicationEventPublisher events;
    private final JdbcClient jdbc;

    JobCloser(
            Jobs jobs,
            Tasks tasks,
            PunchItems punchItems,
            JobHistory history,
            ShopClock clock,
            ApplicationEventPublisher events,
            JdbcClient jdbc) {
        this.jobs = jobs;
        this.tasks = tasks;
        this.punchItems = punchItems;
        this.history = history;
        this.clock = clock;
        this.events = events;
        this.jdbc = jdbc;
    }

    void close(Job job, Closing said, UUID by) {
        if (job.state() == JobState.CLOSED) {
            return;
        }
        if (job.state() != JobState.RUNNING) {
            throw new Refused(
                    "Only a running job is closed; this one is " + job.state().code() + ".");
        }
        List<Task> open = tasks.findByJobIdAndStateIn(job.id(), EnumSet.of(TaskState.PLANNED, TaskState.STARTED));
        guardAnswered(job, open, said);
        LocalDate today = clock.today();
        open.forEach(task -> settle(task, said.tasks(), today, by));
        String from = job.state().code();
        job.close(today);
        history.job(job.id(), from, job.state(), today, by, "");
        // Listeners read the closed job by SQL.
        jobs.flush();
        events.publishEvent(new JobClosed(job.id(), today, by));
    }

    private void guardAnswered(Job job, List<Task> open, Closing said) {
        long silent =
                open.stream().filter(t -> !said.tasks().containsKey(t.id())).count();
        if (silent > 0) {
            throw new Refused("tasks", "Say for each open task what became of it; " + silent + " without an answer.");
        }
        int items = punchItems.countByJobIdAndDoneOnIsNull(job.id());
        if (items > 0 && !said.punchItemsStay()) {
            throw new Refused(
                    "punchItemsStay",
                    (items == 1 ? "One punch list item is" : items + " punch list items are")
                            + " still open. Mark them done, or tick that the job closes with them open.");
        }
        if (!said.withoutWalkThrough() && !walkedThrough(job.id())) {
            throw new Refused(
                    "withoutWalkThrough", "No walk-through is recorded. Record it, or tick that there was none.");
        }
    }

    private boolean walkedThrough(UUID jobId) {
        return jdbc.sql("select exists (select 1 from job_event where job_id = ? and kind = 'walk-through')")
                .param(jobId)
                .query(Boolean.class)
                .single();
    }

    /** Late bookkeeping: no wait starts, and a quantity nobody counted is not confirmed. */
    private void settle(Task task, Map<UUID, Closing.TaskAnswer> answers, LocalDate on, UUID by) {
        String from = task.state().code();
        switch (Objects.requireNonNull(answers.get(task.id()))) {
            case DONE -> task.finish(on, by, task.quantity(), false);
            case NEVER_NEEDED -> task.drop(true);
            case DROPPED -> task.drop(false);
        }
        history.task(task, from, on, by, "answered at closing");
    }

    void reopen(Job job, String reason, UUID by) {
        JobState from = job.state();
        if (from != JobState.CLOSED && from != JobState.LOST) {
            return;
        }
        LocalDate today = clock.today();
        job.reopen(from == JobState.CLOSED ? JobState.RUNNING : beforeLoss(job.id()));
        history.job(job.id(), from.code(), job.state(), today, by, reason);
        jobs.flush();
        events.publishEvent(new JobReopened(job.id(), today, by));
    }

    private JobState beforeLoss(UUID jobId) {
        return jdbc.sql("""
                        select from_state from job_event where job_id = ? and kind = 'job' and to_state = 'lost'
                        order by at desc limit 1""")
                .param(jobId)
                .query(String.class)
                .optional()
                .flatMap(JobState::of)
                .filter(JobState.LOST.next()::contains)
                .orElse(JobState.LEAD);
    }
}
