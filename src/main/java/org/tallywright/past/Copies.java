package org.tallywright.past;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.estimates.LineOrigins;
import org.tallywright.jobs.ShopDates;
import org.tallywright.shared.ShopClock;

/** The record of what was copied: it answers where a line comes from, and what one press takes out again. */
@Component
class Copies implements LineOrigins {
    private final ShopClock clock;
    private final ShopDates dates;
    private final JdbcClient jdbc;

    Copies(ShopClock clock, ShopDates dates, JdbcClient jdbc) {
        this.clock = clock;
        this.dates = dates;
        this.jdbc = jdbc;
    }

    /** What a line of the record points at; the names of its columns. */
    enum Sort {
        PIECE("piece_id"),
        TASK("task_id"),
        MATERIAL("estimate_material_id"),
        OTHER("estimate_other_id");

        private final String column;

        Sort(String column) {
            this.column = column;
        }
    }

    record Line(Sort sort, UUID id, String origin) {}

    /** The job that a copy went into; empty where there is no such copy. */
    Optional<UUID> jobOf(UUID copy) {
        return jdbc.sql("select job_id from past_copy where id = ?")
                .param(copy)
                .query(UUID.class)
                .optional();
    }

    /**
     * What is known of a copy that comes in.
     *
     * @param content what it held; null where that was not kept, and once it was taken out
     */
    record Known(UUID job, @Nullable UUID content, boolean takenOut) {}

    Optional<Known> known(UUID copy) {
        return jdbc.sql("""
                        select job_id as job, content, false as taken_out from past_copy where id = :id
                        union all select job_id, null, true from past_copy_taken_out where id = :id""").param("id", copy).query(Known.class).optional();
    }

    void add(CopyPlan plan, UUID job, List<Line> lines, UUID by) {
        jdbc.sql("""
                        insert into past_copy (id, job_id, from_job_id, from_piece_id, what, copied_on, copied_by, content)
                        values (:id, :job, :from, cast(:piece as uuid), :what, :on, :by, :content)""")
                .param("id", plan.id())
                .param("job", job)
                .param("from", plan.from().ref().id())
                .param(
                        "piece",
                        plan.fromPiece() == null ? null : plan.fromPiece().toString())
                .param("what", plan.what())
                .param("on", clock.today())
                .param("by", by)
                .param("content", plan.content())
                .update();
        for (Line line : lines) {
            jdbc.sql("insert into past_copy_line (copy_id, job_id, " + line.sort.column
                            + ", origin) values (?, ?, ?, ?)")
                    .params(plan.id(), job, line.id, line.origin)
                    .update();
        }
    }

    record Held(Sort sort, UUID id) {}

    /** What is still there of a copy. */
    List<Held> linesOf(UUID copy) {
        List<Held> held = new ArrayList<>();
        jdbc.sql(
                        "select piece_id, task_id, estimate_material_id, estimate_other_id from past_copy_line where copy_id = ?")
                .param(copy)
                .query(row -> {
                    for (Sort sort : Sort.values()) {
                        UUID id = row.getObject(sort.column, UUID.class);
                        if (id != null) {
                            held.add(new Held(sort, id));
                        }
                    }
                });
        return held;
    }

    /** Its id stays known. */
    void remove(UUID copy) {
        jdbc.sql("insert into past_copy_taken_out (id, job_id) select id, job_id from past_copy where id = ?")
                .param(copy)
                .update();
        jdbc.sql("delete from past_copy where id = ?").param(copy).update();
    }

    private record Row(
            UUID copy,
            String what,
            java.time.LocalDate on,
            String number,
            @Nullable UUID line,
            @Nullable String origin,
            boolean otherCost) {}

    @Override
    @Transactional(readOnly = true)
    public Origins of(UUID job) {
        Map<UUID, String> lines = new HashMap<>();
        Map<UUID, Row> copies = new LinkedHashMap<>();
        Map<UUID, Integer> sizes = new HashMap<>();
        Set<UUID> withCosts = new HashSet<>();
        jdbc.sql("""
                        select c.id as copy, c.what, c.copied_on as "on", j.number, l.id as line, l.origin,
                            l.estimate_other_id is not null as other_cost
                        from past_copy c join job j on j.id = c.job_id
                        left join past_copy_line l on l.copy_id = c.id
                        where c.job_id = ? order by c.copied_on, c.id""").param(job).query(Row.class).list().forEach(row -> {
            copies.putIfAbsent(row.copy, row);
            if (row.line != null && row.origin != null) {
                lines.put(row.line, row.origin);
                sizes.merge(row.copy, 1, Integer::sum);
            }
            if (row.otherCost) {
                withCosts.add(row.copy);
            }
        });
        return new Origins(
                lines,
                copies.values().stream()
                        .map(row -> copy(row, sizes.getOrDefault(row.copy, 0), withCosts.contains(row.copy)))
                        .toList());
    }

    private Copy copy(Row row, int lines, boolean otherCosts) {
        return new Copy(
                "From " + row.what + ", copied " + dates.day(row.on) + ": " + lines + (lines == 1 ? " line" : " lines"),
                "/jobs/" + row.number + "/copies/" + row.copy + "/removal",
                otherCosts);
    }
}
