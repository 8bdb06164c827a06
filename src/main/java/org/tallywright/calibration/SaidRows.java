package org.tallywright.calibration;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.calibration.engine.Distribution;
import org.tallywright.shared.ShopClock;

/** The forecasts that were kept of jobs that are closed now: of their accepted bids, and of the way to the end. */
@Component
class SaidRows {
    private final JdbcClient jdbc;
    private final ShopClock clock;

    SaidRows(JdbcClient jdbc, ShopClock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** @param hours all of the job, in the words of the bid */
    record BidRow(UUID job, LocalDate on, Distribution unwidened, Distribution hours) {}

    /**
     * @param unwidened hours still to come
     * @param tasks those that it spoke of
     */
    record StageRow(
            UUID job,
            int percent,
            LocalDate on,
            double soFar,
            Distribution unwidened,
            Distribution atEnd,
            Set<UUID> tasks) {}

    /** @param share of the hours of the bid, at the starting rates of its day, that those tasks held */
    record DroppedRow(Set<UUID> tasks, double share) {
        static final DroppedRow NONE = new DroppedRow(Set.of(), 0);
    }

    /** All of them, by job; with the tasks that accepted change orders brought, and options that no kept forecast speaks of. */
    Said read() {
        Map<UUID, BidRow> bids = new HashMap<>();
        jdbc.sql("""
                        select b.job_id, coalesce(a.made_at, f.made_at) as made_at,
                               coalesce(a.unwidened, f.unwidened) as unwidened, coalesce(a.hours, f.hours) as hours
                        from bid b left join bid_forecast f on f.bid_id = b.id
                        left join agreed_forecast a on a.bid_id = b.id join job j on j.id = b.job_id
                        where b.kind = 'bid' and b.state = 'accepted' and j.state = 'closed'
                            and (coalesce(a.hours, f.hours))[200] > 0""").query(this::bid).list().forEach(row -> bids.put(row.job(), row));
        Map<UUID, List<StageRow>> stages =
                jdbc.sql("""
                        select f.job_id, f.stage, f.on_date, f.hours_so_far, f.unwidened, f.at_end,
                               array(select t ->> 'id' from jsonb_array_elements(f.tasks) t) as task_ids
                        from running_forecast f join job j on j.id = f.job_id
                        where f.stage is not null and j.state = 'closed' order by f.stage""").query(SaidRows::stage).list().stream().collect(Collectors.groupingBy(StageRow::job));
        Map<UUID, Set<UUID>> changes = new HashMap<>();
        jdbc.sql("""
                        select b.job_id, t.task_id
                        from bid_task t join bid b on b.id = t.bid_id join job j on j.id = b.job_id
                        where b.kind in ('change order', 'option') and b.state = 'accepted' and j.state = 'closed'
                        and not exists (select 1 from agreed_forecast a where a.bid_id = b.option_of)
                        and t.task_id is not null""").query(row -> {
            changes.computeIfAbsent(row.getObject("job_id", UUID.class), job -> new HashSet<>())
                    .add(row.getObject("task_id", UUID.class));
        });
        return new Said(bids, stages, changes, dropped());
    }

    private Map<UUID, DroppedRow> dropped() {
        Map<UUID, DroppedRow> dropped = new HashMap<>();
        jdbc.sql("""
                        select b.job_id, array_agg(t.task_id) filter (where k.state = 'dropped') as tasks,
                               coalesce(sum(t.quantity * t.starting_unit_hours) filter (where k.state = 'dropped')
                                   / nullif(sum(t.quantity * t.starting_unit_hours), 0), 0) as share
                        from bid_task t
                        join bid b on b.id = t.bid_id join job j on j.id = b.job_id
                        left join task k on k.id = t.task_id
                        where b.state = 'accepted' and j.state = 'closed'
                        and (b.kind = 'bid' or exists (select 1 from agreed_forecast a where a.bid_id = b.option_of))
                        group by b.job_id having bool_or(k.state = 'dropped')""").query(row -> {
            UUID[] tasks = (UUID[]) row.getArray("tasks").getArray();
            dropped.put(row.getObject("job_id", UUID.class), new DroppedRow(Set.of(tasks), row.getDouble("share")));
        });
        return dropped;
    }

    private BidRow bid(ResultSet row, int n) throws SQLException {
        Timestamp made = row.getTimestamp("made_at");
        return new BidRow(
                row.getObject("job_id", UUID.class),
                clock.dateOf(made.toInstant()),
                distribution(row, "unwidened"),
                distribution(row, "hours"));
    }

    private static StageRow stage(ResultSet row, int n) throws SQLException {
        String[] tasks = (String[]) row.getArray("task_ids").getArray();
        return new StageRow(
                row.getObject("job_id", UUID.class),
                row.getInt("stage"),
                row.getObject("on_date", LocalDate.class),
                row.getDouble("hours_so_far"),
                distribution(row, "unwidened"),
                distribution(row, "at_end"),
                Stream.of(tasks).map(UUID::fromString).collect(Collectors.toSet()));
    }

    static Distribution distribution(ResultSet row, String column) throws SQLException {
        Double[] kept = (Double[]) row.getArray(column).getArray();
        return Distribution.ofQuantiles(
                Stream.of(kept).mapToDouble(Double::doubleValue).toArray());
    }
}
