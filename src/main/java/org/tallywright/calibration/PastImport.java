package org.tallywright.calibration;

import java.sql.Timestamp;
import java.time.Instant;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.jpa.SaveTurn;
import org.tallywright.trail.Trail;

/** Brings in finished work from a file, all of it or nothing, and takes it out again. */
@Service
public class PastImport {
    private final JdbcClient jdbc;
    private final TaskKinds kinds;
    private final Recalibration recalibration;
    private final Trail trail;
    private final ShopClock clock;
    private final SaveTurn turn;

    PastImport(
            JdbcClient jdbc,
            TaskKinds kinds,
            Recalibration recalibration,
            Trail trail,
            ShopClock clock,
            SaveTurn turn) {
        this.jdbc = jdbc;
        this.kinds = kinds;
        this.recalibration = recalibration;
        this.trail = trail;
        this.clock = clock;
        this.turn = turn;
    }

    /** A file that was brought in. */
    public record Batch(UUID id, String fileName, Instant at, String by, int tasks, int jobs) {}

    @Transactional(readOnly = true)
    public List<Batch> batches() {
        return jdbc.sql("""
                        select i.id, i.file_name, i.imported_at, p.name,
                               (select count(*) from past_task t where t.past_import_id = i.id) as tasks,
                               (select count(distinct job) from past_task t where t.past_import_id = i.id) as jobs
                        from past_import i join person p on p.id = i.imported_by order by i.imported_at desc, i.id""")
                .query((row, n) -> new Batch(
                        row.getObject("id", UUID.class),
                        row.getString("file_name"),
                        row.getTimestamp("imported_at").toInstant(),
                        row.getString("name"),
                        row.getInt("tasks"),
                        row.getInt("jobs")))
                .list();
    }

    /** Which column is which, by their headings. */
    public static Map<PastColumn, Integer> guess(PastFile file) {
        Map<PastColumn, Integer> columns = new EnumMap<>(PastColumn.class);
        for (PastColumn column : PastColumn.values()) {
            columns.put(column, column.guess(file.headings()));
        }
        return columns;
    }

    /** Reads without keeping anything. */
    @Transactional(readOnly = true)
    public PastReading read(PastFile file, Map<PastColumn, Integer> columns) {
        Map<String, TaskKindCard> named = new HashMap<>();
        List<TaskKindCard> all = kinds.all();
        Map<UUID, TaskKindCard> now =
                kinds.countedAs(all.stream().map(TaskKindCard::id).toList());
        all.forEach(kind -> {
            named.put(kind.code(), now.getOrDefault(kind.id(), kind));
            named.put(kind.name().toLowerCase(Locale.ROOT), now.getOrDefault(kind.id(), kind));
        });
        Map<String, UUID> people = new HashMap<>();
        jdbc.sql("select id, lower(name) as name from person order by active").query(row -> {
            people.put(row.getString("name"), row.getObject("id", UUID.class));
        });
        List<String> numbers =
                jdbc.sql("select number from job").query(String.class).list();
        return PastReading.of(
                file, columns, new PastReading.Known(named, people, new HashSet<>(numbers), clock.today()));
    }

    /**
     * Keeps all tasks of a file that has no error; the same id again is a repeat.
     *
     * @throws Refused where any cell was refused
     */
    @Transactional
    public void bringIn(UUID id, String fileName, PastReading reading, UUID by) {
        turn.of(id);
        if (jdbc.sql("select exists (select 1 from past_import where id = ?)")
                .param(id)
                .query(Boolean.class)
                .single()) {
            return;
        }
        if (!reading.errors().isEmpty() || reading.tasks().isEmpty()) {
            throw new Refused("Nothing was brought in: correct the cells below first.");
        }
        trail.by(by);
        jdbc.sql("insert into past_import (id, file_name, imported_by, imported_at) values (?, ?, ?, ?)")
                .params(id, fileName, by, Timestamp.from(clock.now()))
                .update();
        reading.tasks().forEach(task -> insert(id, task));
        recalibration.ask(reading.tasks().size() + " past tasks brought in");
    }

    private void insert(UUID batch, PastReading.PastTask task) {
        jdbc.sql("""
                        insert into past_task (id, past_import_id, line, job, task_kind_id, quantity, estimated_minutes, actual_minutes,
                            started_on, done_on, person_id) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .param(Ids.next())
                .param(batch)
                .param(task.line())
                .param(task.job())
                .param(task.kind())
                .param(task.quantity())
                .param(task.estimatedMinutes())
                .param(task.actualMinutes())
                .param(task.startedOn())
                .param(task.doneOn())
                .param(task.person())
                .update();
    }

    /** Takes a file out again as if it had never been brought in. */
    @Transactional
    public void undo(UUID id, UUID by) {
        trail.by(by);
        String name = jdbc.sql("select file_name from past_import where id = ?")
                .param(id)
                .query(String.class)
                .optional()
                .orElseThrow(() -> new NotHere("import"));
        jdbc.sql("delete from past_import where id = ?").param(id).update();
        recalibration.ask("\"" + name + "\" taken out again");
    }
}
