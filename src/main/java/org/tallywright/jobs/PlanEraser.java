package org.tallywright.jobs;

import java.util.Collection;
import java.util.UUID;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.Refused;

/**
 * Takes planned work out of a job as if it had never been added: for what was put in by one press and is taken back by one.
 * The trail keeps what was taken out. A task that was begun, or that anything refers to, stays with all the others.
 */
@Service
public class PlanEraser {
    private final JobGate gate;
    private final JdbcClient jdbc;

    PlanEraser(JobGate gate, JdbcClient jdbc) {
        this.gate = gate;
        this.jdbc = jdbc;
    }

    /**
     * All of them or none; what is gone already is a repeat.
     *
     * @throws Refused with the first task that was begun, or where hours, a bid or something else refers to one
     */
    @Transactional
    public void erase(UUID jobId, Collection<UUID> tasks, Collection<UUID> pieces, UUID by) {
        gate.holdOpen(jobId, by);
        tasks.forEach(task -> guardUntouched(jobId, task));
        try {
            for (UUID task : tasks) {
                delete("delete from job_event where job_id = ? and task_id = ?", jobId, task);
                delete("delete from task where job_id = ? and id = ?", jobId, task);
            }
            for (UUID piece : pieces) {
                delete("delete from piece where job_id = ? and id = ?", jobId, piece);
            }
        } catch (DataIntegrityViolationException e) {
            throw new Refused(
                    "Something was added to it since: hours, a bid, an option, a measure, a photo or another task."
                            + " Take that out first, or leave its lines out one by one.");
        }
    }

    private void delete(String sql, UUID jobId, UUID id) {
        jdbc.sql(sql).params(jobId, id).update();
    }

    private void guardUntouched(UUID jobId, UUID task) {
        jdbc.sql("""
                        select name from task where job_id = ? and id = ?
                        and (state in ('started', 'done') or started_on is not null)""").params(jobId, task).query(String.class).optional().ifPresent(name -> {
            throw new Refused("\"" + name + "\" was begun, so the copy stays. Leave its lines out one by one.");
        });
    }
}
