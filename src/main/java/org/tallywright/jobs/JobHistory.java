package org.tallywright.jobs;

import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Ids;
import org.tallywright.shared.ShopClock;

/** Writes the dated, named record of what changed in a job. */
@Component
class JobHistory {
    private final EntityManager entities;
    private final ShopClock clock;

    JobHistory(EntityManager entities, ShopClock clock) {
        this.entities = entities;
        this.clock = clock;
    }

    void job(UUID jobId, String from, JobState to, LocalDate on, @Nullable UUID by, String note) {
        write(jobId, "job", new JobEvent.Change(null, null, from, to.code()), on, by, note);
    }

    void stage(UUID jobId, UUID stageId, String from, String to, LocalDate on, UUID by) {
        write(jobId, "stage", new JobEvent.Change(null, stageId, from, to), on, by, "");
    }

    void task(Task task, String from, LocalDate on, @Nullable UUID by, String note) {
        String to = task.neverNeeded() ? "never needed" : task.state().code();
        write(task.jobId(), "task", new JobEvent.Change(task.id(), null, from, to), on, by, note);
    }

    /** Once for each id, however often it is sent. */
    void walkThrough(UUID jobId, UUID id, LocalDate on, UUID by, String note) {
        if (entities.find(JobEvent.class, id) == null) {
            JobEvent.Change change = new JobEvent.Change(null, null, "", "held");
            entities.persist(new JobEvent(id, jobId, "walk-through", change, when(on), by, note));
        }
    }

    private void write(UUID jobId, String kind, JobEvent.Change change, LocalDate on, @Nullable UUID by, String note) {
        entities.persist(new JobEvent(Ids.next(), jobId, kind, change, when(on), by, note));
    }

    private JobEvent.When when(LocalDate on) {
        return new JobEvent.When(on, clock.now());
    }
}
