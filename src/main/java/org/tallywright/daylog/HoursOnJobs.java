package org.tallywright.daylog;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.LoggedHours;

/** The minutes that the job pages show. */
@Component
class HoursOnJobs implements LoggedHours {
    private final JdbcClient jdbc;

    HoursOnJobs(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public OnJob onJob(UUID jobId, @Nullable UUID onlyPerson) {
        Map<UUID, Integer> byTask = new HashMap<>();
        int[] withoutTask = {0};
        jdbc.sql("""
                        select task_id, sum(minutes) as minutes from time_entry
                        where job_id = :job and (cast(:person as uuid) is null or person_id = :person) group by task_id""").param("job", jobId).param("person", onlyPerson).query(row -> {
            UUID task = row.getObject("task_id", UUID.class);
            if (task == null) {
                withoutTask[0] = row.getInt("minutes");
            } else {
                byTask.put(task, row.getInt("minutes"));
            }
        });
        return new OnJob(byTask, withoutTask[0]);
    }

    @Override
    public Map<UUID, Integer> totals(Collection<UUID> jobIds) {
        Map<UUID, Integer> totals = new HashMap<>();
        if (!jobIds.isEmpty()) {
            jdbc.sql(
                            "select job_id, sum(minutes) as minutes from time_entry where job_id = any(?::uuid[]) group by job_id")
                    .param(Columns.ids(jobIds))
                    .query(row -> {
                        totals.put(row.getObject("job_id", UUID.class), row.getInt("minutes"));
                    });
        }
        return totals;
    }
}
