package org.tallywright.jobs;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;

/** Looks up jobs by number or id without loading them. */
@Component
class JobRefs {
    private final JdbcClient jdbc;

    JobRefs(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    JobRef find(String number) {
        return ref("number", number);
    }

    JobRef get(UUID jobId) {
        return ref("id", jobId);
    }

    private JobRef ref(String column, Object value) {
        return jdbc.sql("select id, number, title, state, client_id, site_id from job where " + column + " = ?")
                .param(value)
                .query((row, n) -> new JobRef(
                        row.getObject(1, UUID.class),
                        row.getString(2),
                        row.getString(3),
                        JobState.of(row.getString(4)).orElseThrow(),
                        row.getObject(5, UUID.class),
                        row.getObject(6, UUID.class)))
                .optional()
                .orElseThrow(() -> new NotHere("job"));
    }

    /** The state as it stays until the end of the transaction. */
    JobState holdState(UUID jobId) {
        return jdbc.sql("select state from job where id = ? for share")
                .param(jobId)
                .query(String.class)
                .optional()
                .flatMap(JobState::of)
                .orElseThrow(() -> new NotHere("job"));
    }

    void guardSite(JobDetails details) {
        boolean fits = jdbc.sql("select exists (select 1 from site where id = ? and client_id = ?)")
                .params(details.siteId(), details.clientId())
                .query(Boolean.class)
                .single();
        if (!fits) {
            throw new Refused("site", "Pick a site of this client.");
        }
    }
}
