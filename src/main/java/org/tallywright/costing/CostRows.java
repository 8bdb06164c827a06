package org.tallywright.costing;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.NotHere;

/** Reads one job's hours, bids and lines, one query for each kind of row. */
@Component
class CostRows {
    private final JdbcClient jdbc;

    CostRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Up to now, whatever the day. */
    record Total(boolean closed, int unpricedMinutes, BigDecimal overheadRate, CostSums sums) {}

    Total total(UUID job) {
        return jdbc.sql("""
                        select c.*, j.state = 'closed' as closed from costing_job c join job j on j.id = c.job_id
                        where c.job_id = ?""").param(job).query(CostRows::total).optional().orElseThrow(() -> new NotHere("job"));
    }

    private static Total total(ResultSet row, int n) throws SQLException {
        return new Total(
                row.getBoolean("closed"),
                row.getInt("unpriced_minutes"),
                row.getBigDecimal("overhead_rate"),
                sums(row));
    }

    /** Of a row of {@code costing_job}. */
    static CostSums sums(ResultSet row) throws SQLException {
        return new CostSums(
                row.getInt("minutes"),
                row.getBigDecimal("labour_amount"),
                row.getBigDecimal("overhead_amount"),
                row.getBigDecimal("material_amount"),
                row.getBigDecimal("other_amount"),
                row.getBigDecimal("price_amount"));
    }

    /** Accepted bid and change orders, as they were issued. */
    List<JobFigures.Agreed> agreed(UUID job) {
        return jdbc.sql("""
                        select * from bid where job_id = ? and state = 'accepted'
                        order by kind, issued_at, id""").param(job).query(CostRows::agreed).list();
    }

    private static JobFigures.Agreed agreed(ResultSet row, int n) throws SQLException {
        CostSums amounts = new CostSums(
                row.getInt("estimated_minutes"),
                row.getBigDecimal("labour_amount"),
                row.getBigDecimal("overhead_amount"),
                row.getBigDecimal("material_amount"),
                row.getBigDecimal("other_amount"),
                row.getBigDecimal("price_amount"));
        BigDecimal contingency = row.getBigDecimal("contingency_amount");
        BigDecimal cushion =
                contingency.add(row.getBigDecimal("margin_amount")).add(row.getBigDecimal("rounding_amount"));
        return new JobFigures.Agreed(
                row.getObject("id", UUID.class), row.getString("number"), amounts, contingency, cushion);
    }

    /** Minutes of one task (null: none), hour class and person. */
    record Logged(
            @Nullable UUID taskId,
            String hourClass,
            UUID personId,
            String person,
            int minutes,
            int unpriced,
            BigDecimal labour) {}

    List<Logged> logged(UUID job, LocalDate asOf) {
        return jdbc.sql("""
                        select e.task_id, e.hour_class, e.person_id, p.name as person, sum(e.minutes) as minutes,
                               coalesce(sum(e.minutes) filter (where e.amount is null), 0) as unpriced,
                               coalesce(sum(e.amount), 0) as labour
                        from costing_entry e join person p on p.id = e.person_id
                        where e.job_id = ? and e.on_date <= ?
                        group by e.task_id, e.hour_class, e.person_id, p.name""").params(job, asOf).query(Logged.class).list();
    }

    /** @param bidLines 0 for a task in no accepted bid; bid figures are then nothing */
    record TaskRow(
            UUID taskId,
            String name,
            String pieceName,
            String stageName,
            String unit,
            String state,
            BigDecimal quantity,
            int estimatedMinutes,
            @Nullable BigDecimal quantityDone,
            boolean quantityConfirmed,
            int bidLines,
            int bidMinutes,
            BigDecimal bidQuantity,
            BigDecimal bidLabourAmount) {}

    List<TaskRow> tasks(UUID job) {
        return jdbc.sql("""
                        select task_id, name, piece_name, stage_name, unit, state, quantity, estimated_minutes,
                               quantity_done, quantity_confirmed, bid_lines, bid_minutes, bid_quantity, bid_labour_amount
                        from costing_task where job_id = ? order by stage_position, position, task_id""").param(job).query(TaskRow.class).list();
    }

    List<JobFigures.Again> again(UUID job, LocalDate asOf) {
        return jdbc.sql("""
                        select e.id as entry_id, e.on_date as on, p.name as person, coalesce(t.name, '') as task, e.hour_class,
                               e.minutes, e.reason
                        from time_entry e join person p on p.id = e.person_id left join task t on t.id = e.task_id
                        where e.job_id = ? and e.on_date <= ? and e.hour_class in ('rework', 'call-back')
                        order by e.on_date, e.id""").params(job, asOf).query(JobFigures.Again.class).list();
    }

    /** One material, all its lines together. */
    record MaterialLine(
            @Nullable UUID materialId,
            String name,
            String unit,
            BigDecimal net,
            BigDecimal quantity,
            BigDecimal freight,
            BigDecimal amount) {

        MaterialFigures.Planned planned() {
            return new MaterialFigures.Planned(net, quantity, freight, amount);
        }
    }

    List<MaterialLine> bidMaterials(UUID job) {
        return materials("""
                bid_material l join bid b on b.id = l.bid_id where b.job_id = ? and b.state = 'accepted'""", job);
    }

    /** While nothing is accepted the plan is the bid itself: what the client may leave is none of it. */
    private static final String IN_NO_OPTION =
            " and not exists (select 1 from estimate_option_line o where o.id = l.id)";

    /** Without the options. */
    List<MaterialLine> estimateMaterials(UUID job) {
        return materials("""
                (select e.*, m.name, m.unit from estimate_material e join material m on m.id = e.material_id) l
                where l.job_id = ?""" + IN_NO_OPTION, job);
    }

    private List<MaterialLine> materials(String from, UUID job) {
        return jdbc.sql("""
                        select l.material_id, min(l.name) as name, min(l.unit) as unit, sum(l.net_quantity) as net,
                               sum(l.purchase_quantity) as quantity, sum(l.freight_amount) as freight, sum(l.amount) as amount
                        from\s""" + from
                        + " group by l.material_id, case when l.material_id is null then l.name end order by 2")
                .param(job)
                .query(MaterialLine.class)
                .list();
    }

    /** A line of other cost. */
    record OtherLine(String name, BigDecimal amount) {}

    List<OtherLine> bidOthers(UUID job) {
        return others("bid_other l join bid b on b.id = l.bid_id where b.job_id = ? and b.state = 'accepted'", job);
    }

    /** Without the options. */
    List<OtherLine> estimateOthers(UUID job) {
        return others("estimate_other l where l.job_id = ?" + IN_NO_OPTION, job);
    }

    private List<OtherLine> others(String from, UUID job) {
        return jdbc.sql("select l.description as name, sum(l.amount) as amount from " + from + " group by 1 order by 1")
                .param(job)
                .query(OtherLine.class)
                .list();
    }
}
