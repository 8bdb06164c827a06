package org.tallywright.past;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.JobRef;

/** Reads what a job that is being estimated has already, so that a copy does not offer it twice. */
@Component
class PlannedLines {
    private static final String SELECT = """
            select 'task' as sort, t.piece_id, coalesce(k.merged_into, k.id)::text as what
            from task t join task_kind k on k.id = t.task_kind_id where t.job_id = :job and t.state <> 'dropped'
            union all
            select 'material', piece_id, material_id::text from estimate_material where job_id = :job
            union all
            select 'cost', null, description from estimate_other where job_id = :job""";

    private final JdbcClient jdbc;

    PlannedLines(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** @param piece null for the whole job */
    private record Line(String sort, @Nullable UUID piece, String what) {}

    /** Kinds of work and material by piece, and other costs by what they are called. */
    static final class Planned {
        private final Set<Line> lines;

        private Planned(Set<Line> lines) {
            this.lines = lines;
        }

        boolean hasTask(@Nullable UUID piece, UUID kind) {
            return lines.contains(new Line("task", piece, kind.toString()));
        }

        boolean hasMaterial(@Nullable UUID piece, UUID material) {
            return lines.contains(new Line("material", piece, material.toString()));
        }

        boolean hasCost(String description) {
            return lines.contains(new Line("cost", null, tidy(description)));
        }
    }

    Planned of(JobRef job) {
        return new Planned(new HashSet<>(jdbc.sql(SELECT)
                .param("job", job.id())
                .query(PlannedLines::line)
                .list()));
    }

    private static Line line(ResultSet row, int n) throws SQLException {
        return new Line(row.getString("sort"), row.getObject("piece_id", UUID.class), tidy(row.getString("what")));
    }

    private static String tidy(String what) {
        return what.strip().toLowerCase(Locale.ROOT);
    }
}
