package org.tallywright.takeoff;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotHere;

/** The pieces of a job as takeoff needs them. */
@Component
public class PieceFacts {
    private static final String SELECT =
            "select id, piece_kind_id, name, width, height, depth, count from piece where job_id = ?";

    private final JdbcClient jdbc;

    PieceFacts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** @param count how many alike */
    public record Fact(
            UUID id,
            @Nullable UUID kindId,
            String name,
            @Nullable Length width,
            @Nullable Length height,
            @Nullable Length depth,
            int count) {}

    public List<Fact> ofJob(UUID job) {
        return jdbc.sql(SELECT + " order by position, id")
                .param(job)
                .query(PieceFacts::fact)
                .list();
    }

    /** @throws NotHere where the job has no such piece */
    public Fact of(UUID job, UUID piece) {
        return jdbc.sql(SELECT + " and id = ?")
                .params(job, piece)
                .query(PieceFacts::fact)
                .optional()
                .orElseThrow(() -> new NotHere("piece"));
    }

    private static Fact fact(ResultSet row, int n) throws SQLException {
        return new Fact(
                row.getObject(1, UUID.class),
                row.getObject(2, UUID.class),
                row.getString(3),
                length(row, 4),
                length(row, 5),
                length(row, 6),
                row.getInt(7));
    }

    private static @Nullable Length length(ResultSet row, int column) throws SQLException {
        long units = row.getLong(column);
        return row.wasNull() ? null : new Length(units);
    }
}
