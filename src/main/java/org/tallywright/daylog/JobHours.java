package org.tallywright.daylog;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.tallywright.shared.HourClass;

/** The entries of one job: sums by task, class and person in one query, one page of entries in another. */
@Repository
public class JobHours {
    public static final int PAGE = 50;
    private static final Map<String, String> COLUMNS = Map.of(
            "date", "e.on_date %1$s, e.logged_at %1$s, e.id",
            "person", "lower(w.name) %s, e.on_date, e.id",
            "task", "lower(t.name) %s nulls first, e.on_date, e.id",
            "class", "e.hour_class %s, e.on_date, e.id",
            "hours", "e.minutes %s, e.on_date, e.id");
    private static final String WHERE = """
             from time_entry e
            join person w on w.id = e.person_id
            left join task t on t.id = e.task_id
            where e.job_id = :job
                and (cast(:person as uuid) is null or e.person_id = :person)
                and (cast(:task as uuid) is null or e.task_id = :task)
                and (not :noTask or e.task_id is null)
                and (cast(:class as text) is null or e.hour_class = :class)
            """;
    private static final String GROUPS = """
            select grouping(e.task_id) as g_task, grouping(e.hour_class) as g_class, grouping(e.person_id) as g_person,
                e.task_id, min(t.name) as task_name, e.hour_class, e.person_id, min(w.name) as person_name,
                sum(e.minutes)::int as minutes, count(*)::int as entries
            """ + WHERE + """
            group by grouping sets ((e.task_id), (e.hour_class), (e.person_id), ())
            order by minutes desc, task_name, e.hour_class, person_name""";
    private static final String LIST = """
            select e.id, e.on_date, w.name as person_name, t.name as task_name, e.hour_class, e.minutes, e.note, e.reason,
                e.logged_at, e.correction
            """;

    private final JdbcClient jdbc;

    JobHours(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Which entries of a job, in which order.
     *
     * @param noTask only those on the job itself
     * @param sort date, person, task, class or hours, with a minus for falling; anything else is the newest first
     * @param page from 1
     */
    public record Filter(
            UUID job,
            @Nullable UUID person,
            @Nullable UUID task,
            boolean noTask,
            @Nullable HourClass hourClass,
            String sort,
            int page) {
        public Filter {
            String key = sort.startsWith("-") ? sort.substring(1) : sort;
            sort = COLUMNS.containsKey(key) ? sort : "-date";
            page = Math.max(1, Math.min(page, 100_000));
        }

        String order() {
            boolean falling = sort.startsWith("-");
            return String.format(
                    COLUMNS.getOrDefault(falling ? sort.substring(1) : sort, "e.id"), falling ? "desc" : "asc");
        }
    }

    /** A sum; {@code of} is task, class, person or all, {@code key} what to filter by. */
    public record Sum(String of, String key, String name, int minutes, int entries) {}

    public record Row(
            UUID id,
            LocalDate date,
            String person,
            @Nullable String task,
            HourClass hourClass,
            int minutes,
            String note,
            String reason,
            Instant loggedAt,
            boolean correction) {}

    public List<Sum> sums(Filter filter) {
        return with(GROUPS, filter)
                .query((row, n) -> {
                    int minutes = row.getInt("minutes");
                    int entries = row.getInt("entries");
                    if (row.getInt("g_task") == 0) {
                        String task = row.getString("task_id");
                        return new Sum(
                                "task",
                                task == null ? "none" : task,
                                task == null ? "The job itself, no task" : row.getString("task_name"),
                                minutes,
                                entries);
                    }
                    if (row.getInt("g_class") == 0) {
                        HourClass hourClass = HourClass.of(row.getString("hour_class"));
                        return new Sum("class", hourClass.code(), hourClass.label(), minutes, entries);
                    }
                    if (row.getInt("g_person") == 0) {
                        return new Sum(
                                "person", row.getString("person_id"), row.getString("person_name"), minutes, entries);
                    }
                    return new Sum("all", "", "", minutes, entries);
                })
                .list();
    }

    public List<Row> page(Filter filter) {
        return with(LIST + WHERE + " order by " + filter.order() + " limit :size offset :skip", filter)
                .param("size", PAGE)
                .param("skip", (filter.page() - 1) * PAGE)
                .query((row, n) -> new Row(
                        row.getObject("id", UUID.class),
                        row.getObject("on_date", LocalDate.class),
                        row.getString("person_name"),
                        row.getString("task_name"),
                        HourClass.of(row.getString("hour_class")),
                        row.getInt("minutes"),
                        row.getString("note"),
                        row.getString("reason"),
                        row.getTimestamp("logged_at").toInstant(),
                        row.getBoolean("correction")))
                .list();
    }

    private JdbcClient.StatementSpec with(String sql, Filter filter) {
        return jdbc.sql(sql)
                .param("job", filter.job())
                .param("person", filter.person())
                .param("task", filter.task())
                .param("noTask", filter.noTask())
                .param(
                        "class",
                        filter.hourClass() == null ? null : filter.hourClass().code());
    }
}
