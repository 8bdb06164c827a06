package org.tallywright.daylog;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.tallywright.shared.ShopAccount;

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
            UUID id, String name, LocalDate firstOn, Map<LocalDate, Integer> minutes, Map<LocalDate, Mark> marks) {
        /** A weekday that is over, without hours and without a mark, since the person's first day. */
        public boolean gap(LocalDate date, LocalDate today) {
            return date.isBefore(today)
                    && !date.isBefore(firstOn)
                    && date.getDayOfWeek().getValue() <= DayOfWeek.FRIDAY.getValue()
                    && !minutes.containsKey(date)
                    && !marks.containsKey(date);
        }
    }

    /**
     * Minutes of one person on one day and job, corrections included.
     *
     * @param number null for the shop's own account
     * @param what title of the job or name of the account
     */
    public record Worked(@Nullable String number, String what, LocalDate date, int minutes) {}

    public List<Worked> worked(UUID person, LocalDate monday) {
        return jdbc.sql("""
                        select j.number, coalesce(j.title, e.account) as what, e.on_date as date, sum(e.minutes)::int as minutes
                        from time_entry e left join job j on j.id = e.job_id
                        where e.person_id = ? and e.on_date between ? and ?
                        group by j.number, coalesce(j.title, e.account), e.on_date
                        order by j.number nulls last, what, e.on_date""")
                .params(person, monday, monday.plusDays(6))
                .query(Worked.class)
                .list();
    }

    /** What a person's hours of that week are on, each once. */
    public Set<Target> targets(UUID person, LocalDate monday) {
        return jdbc.sql("""
                        select distinct task_id, case when task_id is null then job_id end as job_id, account from time_entry
                        where person_id = ? and on_date between ? and ?""")
                .params(person, monday, monday.plusDays(6))
                .query((row, n) -> {
                    String account = row.getString("account");
                    return new Target(
                            row.getObject("task_id", UUID.class),
                            row.getObject("job_id", UUID.class),
                            account == null ? null : ShopAccount.of(account));
                })
                .set();
    }

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
