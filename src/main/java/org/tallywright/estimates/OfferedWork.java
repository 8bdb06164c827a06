package org.tallywright.estimates;

import java.time.LocalDate;
import java.util.Collection;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.TaskDesk;
import org.tallywright.shared.ShopClock;

/**
 * Keeps work that the client has not agreed to out of the job's plan: what is in an option, and what a change order holds from
 * the day it is issued until a yes. The caller holds the job and has named who acts. What was begun stays in the plan.
 */
@Component
class OfferedWork {
    private final TaskDesk tasks;
    private final ShopClock clock;

    OfferedWork(TaskDesk tasks, ShopClock clock) {
        this.tasks = tasks;
        this.clock = clock;
    }

    void offer(UUID job, Collection<UUID> ids, UUID by, String note) {
        ids.forEach(task -> tasks.offer(job, task, clock.today(), by, note));
    }

    /** @param by null where the client said yes by his link */
    void plan(UUID job, Collection<UUID> ids, LocalDate on, @Nullable UUID by, String note) {
        ids.forEach(task -> tasks.agree(job, task, on, by, note));
    }

    /** What was moved out of an option: part of the bid itself again. */
    void takeBack(UUID job, Collection<UUID> ids, UUID by) {
        plan(job, ids, clock.today(), by, "in no option any more");
    }
}
