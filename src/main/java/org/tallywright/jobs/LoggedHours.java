package org.tallywright.jobs;

import java.util.Collection;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What was logged on jobs, in whole minutes; given by the module that keeps the time entries. */
public interface LoggedHours {
    /**
     * Minutes of one job.
     *
     * @param onlyPerson counts this person's own minutes only; null counts everybody's
     */
    OnJob onJob(UUID jobId, @Nullable UUID onlyPerson);

    /** Minutes of several jobs, of everybody; a job without entries may be missing. One query, however many jobs. */
    Map<UUID, Integer> totals(Collection<UUID> jobIds);

    /**
     * @param byTask minutes on each task; one without entries may be missing
     * @param withoutTask minutes on the job but on no task of it
     */
    record OnJob(Map<UUID, Integer> byTask, int withoutTask) {
        public static final OnJob NOTHING = new OnJob(Map.of(), 0);

        public int total() {
            return withoutTask
                    + byTask.values().stream().mapToInt(Integer::intValue).sum();
        }
    }
}
