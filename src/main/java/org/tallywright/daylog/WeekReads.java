package org.tallywright.daylog;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Day totals of people over some weeks, in two queries however many people and days. */
@Repository
public class WeekReads {
    private static final String WORKERS = """
            select p.id, p.name, least((p.created_at at time zone 'UTC')::date,
                (select min(e.on_date) from time_entry e where e.person_id = p.id)) as first_on
            from person p
            where (cast(:person as uuid) is null and p.role <> 'bookkeeper' or p.id = :person)
                and (p.active or p.id = :person or exists (select from time_entry e
                    where e.person_id = p.id and e.on_date between :from and :to))
            order by lower(p.name), p.id""";
    private static final String DAYS = """
            select person_id, on_date, sum(minutes)::int as minutes, null as kind, '' as note from time_entry
            where person_id = any(:people::uuid[]) and on_date between :from and :to group by person_id, on_date
            union all
            select person_id, on_date, 0, kind, note from day_mark
            where person_id = any(:people::uuid[]) and on_date between :from and :to""";

    private final JdbcClient jdbc;

    WeekReads(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Somebody who logs hours.
     *
     * @param firstOn the first day that a gap can be on
     */
    public record Worker(
            UUID id, String name, LocalDate firstOn, Map<LocalDate, Integer> minutes, Map<LocalDate, Mark> marks) {}

    /** Why nothing was worked, and what was written beside it. */
    public record Mark(String kind, String note) {}

    /** One person's days, or everybody's when no person is named. */
    public List<Worker> between(LocalDate from, LocalDate to, @Nullable UUID person) {
        List<Worker> workers = jdbc.sql(WORKERS)
                .param("person", person)
                .param("from", from)
                .param("to", to)
                .query((row, n) -> new Worker(
                        row.getObject("id", UUID.class),
                        row.getString("name"),
                        row.getObject("first_on", LocalDate.class),
                        new HashMap<>(),
                        new HashMap<>()))
                .list();
        Map<UUID, Worker> byId = new HashMap<>();
        workers.forEach(worker -> byId.put(worker.id(), worker));
        jdbc.sql(DAYS)
                .param("people", Columns.ids(byId.keySet()))
                .param("from", from)
                .param("to", to)
                .query(row -> {
                    Worker worker = byId.get(row.getObject("person_id", UUID.class));
                    LocalDate date = row.getObject("on_date", LocalDate.class);
                    String kind = row.getString("kind");
                    if (worker != null && kind == null) {
                        worker.minutes().put(date, row.getInt("minutes"));
                    } else if (worker != null) {
                        worker.marks().put(date, new Mark(kind, row.getString("note")));
                    }
                });
        return workers;
    }
}
