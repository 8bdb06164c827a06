package org.tallywright.estimates;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Length;

/** What a bid copies of its job: for whom, where, and what is built. */
@Component
class BidFacts {
    private final JdbcClient jdbc;

    BidFacts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record Place(String clientName, String siteAddress) {}

    record PieceFacts(
            String name,
            int count,
            @Nullable Length width,
            @Nullable Length height,
            @Nullable Length depth) {}

    Place place(UUID job) {
        return jdbc.sql("""
                        select c.name, s.address from job j
                        join client c on c.id = j.client_id join site s on s.id = j.site_id
                        where j.id = ?""")
                .param(job)
                .query((row, n) -> new Place(row.getString(1), row.getString(2)))
                .single();
    }

    List<PieceFacts> pieces(UUID job) {
        return jdbc.sql("select name, count, width, height, depth from piece where job_id = ? order by position, id")
                .param(job)
                .query((row, n) -> new PieceFacts(
                        row.getString(1),
                        row.getInt(2),
                        length(row.getObject(3, Long.class)),
                        length(row.getObject(4, Long.class)),
                        length(row.getObject(5, Long.class))))
                .list();
    }

    private static @Nullable Length length(@Nullable Long units) {
        return units == null ? null : new Length(units);
    }
}
