package org.tallywright.past;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.estimates.CostSort;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Length;
import org.tallywright.shared.Money;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;

/** Reads one past job with its estimate and its actuals, in a fixed number of queries. */
@Component
public class PastJobs {
    /** The hour classes that are in no rate, for SQL. */
    static final String BESIDE = Arrays.stream(HourClass.values())
            .filter(one -> !one.countsInRate())
            .map(one -> "'" + one.code() + "'")
            .collect(Collectors.joining(", "));

    private static final String TASKS = """
            select l.*, f.quantity as frozen_quantity,
                coalesce(f.confirmed, l.quantity_confirmed) as confirmed, coalesce(f.minutes, e.minutes, 0) as took,
                coalesce(e.rework, 0) as rework, coalesce(e.call_back, 0) as call_back, coalesce(e.standby, 0) as standby
            from task l
            join stage s on s.id = l.stage_id
            left join (
                select x."taskId" as task_id, x."rateMinutes" as minutes, x."quantityDone" as quantity,
                    x."quantityConfirmed" as confirmed
                from (select r.figures from review r join job j on j.id = r.job_id and j.state = 'closed'
                    where r.job_id = :job order by r.closing desc limit 1) r
                cross join lateral jsonb_to_recordset(r.figures -> 'tasks')
                    as x("taskId" uuid, "rateMinutes" int, "quantityDone" numeric, "quantityConfirmed" boolean)) f on f.task_id = l.id
            left join (
                select task_id, sum(minutes) filter (where hour_class not in (%s)) as minutes,
                    sum(minutes) filter (where hour_class = 'rework') as rework,
                    sum(minutes) filter (where hour_class = 'call-back') as call_back,
                    sum(minutes) filter (where hour_class = 'standby') as standby
                from time_entry where job_id = :job and task_id is not null group by task_id) e on e.task_id = l.id
            where l.job_id = :job and l.state not in ('dropped', 'offered') and %s
            order by s.position, l.position, l.id""".formatted(BESIDE, TakenLines.TASKS);

    private static final String MATERIALS = """
            with line as (
                select l.id, l.piece_id, l.material_id, l.net_quantity as estimated, l.unit_price, l.freight_amount,
                    l.net_quantity / sum(l.net_quantity) over (partition by l.material_id) as share
                from estimate_material l where l.job_id = :job and %s)
            select l.id, l.piece_id, m.id as material_id, m.name, m.unit, m.starting_yield, l.estimated, l.unit_price, l.freight_amount, l.share,
                a.net_quantity, a.charged_quantity, a.cost_amount
            from line l join material m on m.id = l.material_id
            left join job_material a on a.job_id = :job and a.material_id = l.material_id
            union all
            select m.id, null, m.id, m.name, m.unit, m.starting_yield, null, null, 0, 1,
                a.net_quantity, a.charged_quantity, a.cost_amount
            from job_material a join material m on m.id = a.material_id
            where a.job_id = :job and m.material_group <> 'other'
                and not exists (select 1 from line l where l.material_id = a.material_id)
            order by name, id""".formatted(TakenLines.MATERIALS);

    private static final String COSTS = "select l.id, l.sort, l.description, l.amount from estimate_other l"
            + " where l.job_id = :job and " + TakenLines.OTHERS + " order by l.position, l.id";

    private final JobDesk jobs;
    private final JdbcClient jdbc;

    PastJobs(JobDesk jobs, JdbcClient jdbc) {
        this.jobs = jobs;
        this.jdbc = jdbc;
    }

    /**
     * @param money whether other costs are read too; for the owner only
     * @throws NotHere for an unknown number
     */
    @Transactional(readOnly = true)
    public PastJob job(String number, boolean money) {
        return read(jobs.find(number), money);
    }

    /** The job of a piece, with that piece alone. */
    @Transactional(readOnly = true)
    public PastJob piece(UUID piece) {
        UUID job = jdbc.sql("select job_id from piece where id = ?")
                .param(piece)
                .query(UUID.class)
                .optional()
                .orElseThrow(() -> new NotHere("piece"));
        return read(jobs.get(job), false).only(piece);
    }

    private PastJob read(JobRef job, boolean money) {
        return new PastJob(
                job,
                rows("select * from piece where job_id = :job order by position, id", job)
                        .query(PastJobs::piece)
                        .list(),
                rows(TASKS, job).query(PastJobs::task).list(),
                rows(MATERIALS, job).query(PastJobs::material).list(),
                money ? rows(COSTS, job).query(PastJobs::cost).list() : List.of());
    }

    private JdbcClient.StatementSpec rows(String sql, JobRef job) {
        return jdbc.sql(sql).param("job", job.id());
    }

    private static PastPiece piece(ResultSet row, int n) throws SQLException {
        return new PastPiece(
                row.getObject("id", UUID.class),
                new PieceDetails(
                        row.getObject("piece_kind_id", UUID.class),
                        row.getString("name"),
                        length(row, "width"),
                        length(row, "height"),
                        length(row, "depth"),
                        row.getInt("count"),
                        row.getString("note")));
    }

    static @Nullable Length length(ResultSet row, String column) throws SQLException {
        long units = row.getLong(column);
        return row.wasNull() ? null : new Length(units);
    }

    private static PastTask task(ResultSet row, int n) throws SQLException {
        Quantity frozen = quantity(row, "frozen_quantity");
        return new PastTask(
                row.getObject("id", UUID.class),
                row.getObject("piece_id", UUID.class),
                row.getObject("task_kind_id", UUID.class),
                row.getString("name"),
                Unit.of(row.getString("unit")),
                Quantity.of(row.getBigDecimal("quantity")),
                UnitHours.of(row.getBigDecimal("unit_hours")),
                Hours.ofMinutes(row.getInt("estimated_minutes")),
                row.getString("state").equals("done"),
                frozen == null ? quantity(row, "quantity_done") : frozen,
                row.getBoolean("confirmed"),
                row.getInt("took"),
                row.getInt("rework"),
                row.getInt("call_back"),
                row.getInt("standby"));
    }

    private static PastMaterial material(ResultSet row, int n) throws SQLException {
        BigDecimal price = row.getBigDecimal("unit_price");
        BigDecimal cost = row.getBigDecimal("cost_amount");
        return new PastMaterial(
                row.getObject("id", UUID.class),
                row.getObject("piece_id", UUID.class),
                row.getObject("material_id", UUID.class),
                row.getString("name"),
                row.getString("unit"),
                quantity(row, "estimated"),
                price == null ? null : UnitPrice.of(price),
                Money.of(row.getBigDecimal("freight_amount")),
                Yield.of(row.getBigDecimal("starting_yield")),
                row.getBigDecimal("share"),
                quantity(row, "net_quantity"),
                quantity(row, "charged_quantity"),
                cost == null ? null : Money.of(cost),
                false);
    }

    private static @Nullable Quantity quantity(ResultSet row, String column) throws SQLException {
        BigDecimal amount = row.getBigDecimal(column);
        return amount == null ? null : Quantity.of(amount);
    }

    private static PastCost cost(ResultSet row, int n) throws SQLException {
        return new PastCost(
                row.getObject("id", UUID.class),
                CostSort.of(row.getString("sort")),
                row.getString("description"),
                Money.of(row.getBigDecimal("amount")));
    }
}
