package org.tallywright.estimates;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.estimates.EstimateSheet.BidRow;
import org.tallywright.estimates.EstimateSheet.Lot;
import org.tallywright.estimates.EstimateSheet.MaterialRow;
import org.tallywright.estimates.EstimateSheet.OtherRow;
import org.tallywright.estimates.EstimateSheet.TaskRow;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Money;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;

/** Reads the working sum and the list of bids of a job, one query each. */
@Component
class EstimateSheets {
    /** Number of the accepted bid, and of a change order still out on the day, that holds a line; the option it is in. */
    private static final String LOT = """
            coalesce((select max(b.number) from %1$s x join bid b on b.id = x.bid_id
                where x.%2$s = l.id and b.state = 'accepted'), '') as sold_in,
            coalesce((select max(b.number) from %1$s x join bid b on b.id = x.bid_id
                left join bid of on of.id = b.option_of
                where x.%2$s = l.id and coalesce(of.kind, b.kind) = 'change order' and b.state = 'issued'
                    and b.valid_until >= :today), '') as offered_in,
            (select o.option_id from estimate_option_line o where o.%2$s = l.id) as option_id
            """;

    private static final String TASKS = """
            select l.*, coalesce(p.name, '') as piece_name, s.name as stage_name, s.position as stage_position, k.code, k.hour_class, %s
            from task l
                join stage s on s.id = l.stage_id
                join task_kind k on k.id = l.task_kind_id
                left join piece p on p.id = l.piece_id
            where l.job_id = :job and l.state <> 'dropped'
            order by p.position nulls first, p.id, s.position, l.position, l.id""".formatted(LOT.formatted("bid_task", "task_id"));

    private static final String MATERIALS = """
            select l.*, coalesce(p.name, '') as piece_name, m.name, m.unit, m.starting_yield, m.purchase_step, %s
            from estimate_material l
                join material m on m.id = l.material_id
                left join piece p on p.id = l.piece_id
            where l.job_id = :job
            order by l.position, l.id""".formatted(LOT.formatted("bid_material", "estimate_material_id"));

    private static final String OTHERS = """
            select l.*, %s
            from estimate_other l
            where l.job_id = :job
            order by l.position, l.id""".formatted(LOT.formatted("bid_other", "estimate_other_id"));

    private static final String BIDS = """
            select b.id, b.kind, b.number, b.title, b.state, b.issued_on, b.valid_until,
                b.price_amount + coalesce(o.price_amount, 0) as price_amount, b.total_amount + coalesce(o.total_amount, 0) as total_amount,
                b.accepted_on, b.accepted_name, b.declined_on,
                b.kind = 'bid' and exists (select 1 from bid n
                    where n.job_id = b.job_id and n.kind = 'bid' and n.issued_at > b.issued_at) as followed
            from bid b
            left join lateral (select sum(price_amount) as price_amount, sum(total_amount) as total_amount from bid
                where option_of = b.id and state = 'accepted') o on true
            where b.job_id = :job and b.kind <> 'option'
            order by b.issued_at, b.id""";

    /**
     * Whether a bid of the job is accepted, and its options with what the client decided: chosen or declined, since a bid
     * that offered it was accepted. One row without an option where there is none.
     */
    private static final String FRAME = """
            select e.id, e.version, e.name, e.words, e.one_of, (select count(*) from estimate_option_line l where l.option_id = e.id)::int as held, coalesce((
                    select case when b.state = 'accepted' then 'chosen' else 'declined' end
                    from bid b join bid of on of.id = b.option_of
                    where b.option_id = e.id and of.state = 'accepted' order by of.accepted_at desc limit 1), '') as fate,
                exists (select 1 from bid where job_id = :job and kind = 'bid' and state = 'accepted') as sold
            from (select 1) as one left join estimate_option e on e.job_id = :job
            order by e.position, e.id""";

    private final JdbcClient jdbc;

    EstimateSheets(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    EstimateSheet of(UUID job, LocalDate today) {
        List<Frame> frame =
                jdbc.sql(FRAME).param("job", job).query(EstimateSheets::frame).list();
        return new EstimateSheet(
                rows(TASKS, job, today).query(EstimateSheets::task).list(),
                rows(MATERIALS, job, today).query(EstimateSheets::material).list(),
                rows(OTHERS, job, today).query(EstimateSheets::other).list(),
                frame.get(0).sold(),
                options(frame));
    }

    List<OptionRow> options(UUID job) {
        return options(
                jdbc.sql(FRAME).param("job", job).query(EstimateSheets::frame).list());
    }

    private record Frame(boolean sold, @Nullable OptionRow option) {}

    private static Frame frame(ResultSet row, int n) throws SQLException {
        UUID id = row.getObject("id", UUID.class);
        return new Frame(
                row.getBoolean("sold"),
                id == null
                        ? null
                        : new OptionRow(
                                id,
                                row.getInt("version"),
                                row.getString("name"),
                                row.getString("words"),
                                row.getString("one_of"),
                                row.getInt("held"),
                                row.getString("fate")));
    }

    private static List<OptionRow> options(List<Frame> frame) {
        List<OptionRow> options = new ArrayList<>();
        for (Frame row : frame) {
            OptionRow option = row.option();
            if (option != null) {
                options.add(option);
            }
        }
        return options;
    }

    List<BidRow> bids(UUID job, LocalDate today) {
        return rows(BIDS, job, today).query((row, n) -> bid(row, today)).list();
    }

    private JdbcClient.StatementSpec rows(String sql, UUID job, LocalDate today) {
        return jdbc.sql(sql).param("job", job).param("today", today);
    }

    private static TaskRow task(ResultSet row, int n) throws SQLException {
        return new TaskRow(
                id(row, "id"),
                row.getInt("version"),
                row.getString("piece_name"),
                row.getString("stage_name"),
                row.getInt("stage_position"),
                row.getString("code"),
                HourClass.of(row.getString("hour_class")),
                row.getString("name"),
                Quantity.of(row.getBigDecimal("quantity")),
                Unit.of(row.getString("unit")),
                UnitHours.of(row.getBigDecimal("starting_unit_hours")),
                UnitHours.of(row.getBigDecimal("unit_hours")),
                Hours.ofMinutes(row.getInt("estimated_minutes")),
                lot(row));
    }

    private static MaterialRow material(ResultSet row, int n) throws SQLException {
        BigDecimal safe = row.getBigDecimal("safe_quantity");
        return new MaterialRow(
                id(row, "id"),
                row.getInt("version"),
                row.getObject("piece_id", UUID.class),
                row.getString("piece_name"),
                id(row, "material_id"),
                row.getString("name"),
                row.getString("unit"),
                new NetQuantity(Quantity.of(row.getBigDecimal("net_quantity"))),
                Yield.of(row.getBigDecimal("yield")),
                Yield.of(row.getBigDecimal("starting_yield")),
                Quantity.of(row.getBigDecimal("purchase_step")),
                Quantity.of(row.getBigDecimal("purchase_quantity")),
                safe == null ? null : Quantity.of(safe),
                Quantity.of(row.getBigDecimal("covered_quantity")),
                Quantity.of(row.getBigDecimal("stock_quantity")),
                UnitPrice.of(row.getBigDecimal("unit_price")),
                Money.of(row.getBigDecimal("freight_amount")),
                Money.of(row.getBigDecimal("amount")),
                lot(row));
    }

    private static OtherRow other(ResultSet row, int n) throws SQLException {
        return new OtherRow(
                id(row, "id"),
                row.getInt("version"),
                CostSort.of(row.getString("sort")),
                row.getString("description"),
                Money.of(row.getBigDecimal("amount")),
                lot(row));
    }

    private static BidRow bid(ResultSet row, LocalDate today) throws SQLException {
        LocalDate validUntil = row.getObject("valid_until", LocalDate.class);
        return new BidRow(
                id(row, "id"),
                BidKind.of(row.getString("kind")),
                row.getString("number"),
                row.getString("title"),
                BidStanding.of(BidState.of(row.getString("state")), validUntil, row.getBoolean("followed"), today),
                row.getObject("issued_on", LocalDate.class),
                validUntil,
                Money.of(row.getBigDecimal("price_amount")),
                Money.of(row.getBigDecimal("total_amount")),
                row.getObject("accepted_on", LocalDate.class),
                row.getString("accepted_name"),
                row.getObject("declined_on", LocalDate.class));
    }

    private static Lot lot(ResultSet row) throws SQLException {
        return new Lot(row.getString("sold_in"), row.getString("offered_in"), row.getObject("option_id", UUID.class));
    }

    private static UUID id(ResultSet row, String column) throws SQLException {
        return row.getObject(column, UUID.class);
    }
}
