package org.tallywright.daylog;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.tallywright.shared.HourClass;

/** Looks up what hours can go to. */
@Repository
class Places {
    private static final String COLUMNS = """
            select t.id as task_id, j.id as job_id, j.number, j.title, j.state as job_state, j.opened_on, s.one_way_minutes,
                t.name as task_name, t.state as task_state, p.name as piece_name, g.name as stage_name, k.place,
                k.hour_class as usual_class""";
    private static final String TASKS = """
             from task t
            join job j on j.id = t.job_id
            join site s on s.id = j.site_id
            join stage g on g.id = t.stage_id
            join task_kind k on k.id = t.task_kind_id
            left join piece p on p.id = t.piece_id
            """;
    private static final String NAMED = COLUMNS + TASKS + """
            where t.id = any(:tasks::uuid[])
            union all
            select null, j.id, j.number, j.title, j.state, j.opened_on, s.one_way_minutes, null, null, null, null, null, null
            from job j join site s on s.id = j.site_id where j.id = any(:jobs::uuid[])""";
    private static final String OPEN_TASKS = COLUMNS + TASKS + """
            where j.state = 'running' and t.state in ('planned', 'started')
            order by j.number desc, g.position, t.position, t.id
            limit :most""";
    private static final String JOBS = """
            select null::uuid as task_id, j.id as job_id, j.number, j.title, j.state as job_state, j.opened_on,
                null::int as one_way_minutes, null as task_name, null as task_state, null as piece_name, null as stage_name, null as place,
                null as usual_class
            from job j where j.state = any(:states::text[])
            order by (j.state = 'running') desc, j.opened_on desc, j.number desc
            limit :most""";

    private final JdbcClient jdbc;

    Places(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What is known of each target; unknown ids are left out. One query, none when only shop accounts are asked for. */
    Map<Target, Place> of(Collection<Target> targets) {
        Map<Target, Place> known = new HashMap<>();
        List<UUID> tasks = targets.stream()
                .map(Target::taskId)
                .filter(Objects::nonNull)
                .distinct()
                .toList();
        List<UUID> jobs = targets.stream()
                .map(Target::jobId)
                .filter(Objects::nonNull)
                .distinct()
                .toList();
        for (Target target : targets) {
            if (target.account() != null) {
                known.put(target, Place.ofShop(target.account()));
            }
        }
        if (!tasks.isEmpty() || !jobs.isEmpty()) {
            jdbc.sql(NAMED)
                    .param("tasks", Columns.ids(tasks))
                    .param("jobs", Columns.ids(jobs))
                    .query(Places::read)
                    .list()
                    .forEach(place -> known.put(place.target(), place));
        }
        return known;
    }

    /** Tasks of running jobs that are not finished, newest job first. */
    List<Place> openTasks(int most) {
        return jdbc.sql(OPEN_TASKS).param("most", most).query(Places::read).list();
    }

    List<Place> jobs(boolean closed, int most) {
        return jdbc.sql(JOBS)
                .param("states", closed ? "{closed}" : "{running,bidding,lead}")
                .param("most", most)
                .query(Places::read)
                .list();
    }

    private static Place read(ResultSet row, int n) throws SQLException {
        UUID task = row.getObject("task_id", UUID.class);
        return read(
                row,
                task == null
                        ? Target.job(Objects.requireNonNull(row.getObject("job_id", UUID.class)))
                        : Target.task(task));
    }

    static Place read(ResultSet row, Target target) throws SQLException {
        if (target.account() != null) {
            return Place.ofShop(target.account());
        }
        String task = row.getString("task_name");
        String piece = row.getString("piece_name");
        String stage = row.getString("stage_name");
        String usual = row.getString("usual_class");
        return new Place(
                target,
                row.getObject("job_id", UUID.class),
                row.getString("number"),
                row.getString("title"),
                row.getString("job_state"),
                task == null ? row.getString("title") : named(task, piece),
                stage == null ? "" : stage,
                usual == null ? HourClass.DIRECT : HourClass.of(usual),
                "site".equals(row.getString("place")),
                row.getObject("opened_on", LocalDate.class),
                Columns.whole(row, "one_way_minutes"),
                "planned".equals(row.getString("task_state")) || "offered".equals(row.getString("task_state")));
    }

    private static String named(String task, @Nullable String piece) {
        return piece == null ? task : task + ", " + piece;
    }
}
