package org.tallywright.materials;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.calibration.YieldBook;
import org.tallywright.shared.Money;
import org.tallywright.shared.UnitPrice;

/** Reads what came and went, for the material pages: newest first, some rows at a time. */
@Component
public class MaterialLedger {
    private static final String PURCHASES = """
            select p.id, p.bought_on as on_date, m.name as material, m.unit, p.quantity, p.unit_price, p.amount, p.supplier,
                   p.receipt_number, j.number as job_number, null::numeric as net, '' as size, p.note, null::date as gone_on
            from purchase p join material m on m.id = p.material_id left join job j on j.id = p.job_id
            """;

    private static final String USES = """
            select u.id, u.used_on as on_date, m.name as material, m.unit, u.quantity, u.unit_price,
                   round(u.quantity * u.unit_price, 2) as amount, '' as supplier, '' as receipt_number, j.number as job_number,
                   u.net_quantity as net, u.source as size, u.note, null::date as gone_on
            from material_use u join material m on m.id = u.material_id join job j on j.id = u.job_id
            """;

    private static final String RETURNS = """
            select r.id, r.returned_on as on_date, m.name as material, m.unit, r.quantity, null::numeric as unit_price,
                   r.credit_amount as amount, m.supplier, '' as receipt_number, j.number as job_number, null::numeric as net,
                   '' as size, r.note, null::date as gone_on
            from material_return r join material m on m.id = r.material_id left join job j on j.id = r.job_id
            """;

    private static final String OFFCUTS = """
            select o.id, o.kept_on as on_date, m.name as material, m.unit, o.quantity, null::numeric as unit_price,
                   o.credit_amount as amount, '' as supplier, '' as receipt_number, j.number as job_number, null::numeric as net,
                   o.size, o.note, o.gone_on
            from offcut o join material m on m.id = o.material_id left join job j on j.id = o.job_id
            """;

    private final JdbcClient jdbc;

    MaterialLedger(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** @param search part of material, supplier, receipt or job number; blank finds all */
    public List<Row> page(Kind kind, String search, int offset, int size) {
        String sql = "select * from (" + sql(kind) + ") x " + matching()
                + " order by gone_on nulls first, on_date desc, id desc limit :size offset :offset";
        return jdbc.sql(sql)
                .param("like", like(search))
                .param("size", size)
                .param("offset", offset)
                .query(Row.class)
                .list();
    }

    public int count(Kind kind, String search) {
        return jdbc.sql("select count(*) from (" + sql(kind) + ") x " + matching())
                .param("like", like(search))
                .query(Integer.class)
                .single();
    }

    public List<Row> ofJob(Kind kind, String number) {
        return jdbc.sql("select * from (" + sql(kind) + ") x where job_number = :number order by on_date desc, id desc")
                .param("number", number)
                .query(Row.class)
                .list();
    }

    /** What is in stock by the books: bought to stock, less taken and sent back. Negative says that one was not entered. */
    public List<StockRow> stock() {
        return jdbc.sql("""
                        select m.id, m.name, m.unit, coalesce(p.quantity, 0) as bought, coalesce(u.quantity, 0) as taken,
                               coalesce(r.quantity, 0) as returned,
                               coalesce(p.quantity, 0) - coalesce(u.quantity, 0) - coalesce(r.quantity, 0) as here
                        from material m
                        left join (select material_id, sum(quantity) as quantity from purchase where job_id is null group by 1) p on p.material_id = m.id
                        left join (select material_id, sum(quantity) as quantity from material_use where source = 'stock' group by 1) u on u.material_id = m.id
                        left join (select material_id, sum(quantity) as quantity from material_return where job_id is null group by 1) r on r.material_id = m.id
                        where m.stocked or p.quantity is not null or u.quantity is not null
                        order by m.material_group, lower(m.name)""").query(StockRow.class).list();
    }

    /** Yield of each material over all jobs where what is in the work is known. */
    public List<YieldRow> yields() {
        return jdbc.sql("""
                        select m.id, m.name, m.unit, m.starting_yield, m.yield_basis, count(*) as jobs,
                               sum(j.net_quantity) as net, sum(j.charged_quantity) as charged,
                               round(sum(j.net_quantity) / sum(j.charged_quantity), 4) as yield
                        from job_material j join material m on m.id = j.material_id
                        where j.net_quantity > 0 and j.charged_quantity > 0 and j.net_quantity <= j.charged_quantity
                        group by m.id order by m.material_group, lower(m.name)""").query(YieldRow.class).list();
    }

    /** What closed jobs say of each material, for learning its yield. */
    public List<YieldBook.Seen> finished() {
        return finishedBefore(LocalDate.of(9999, 12, 31));
    }

    /** The same of jobs that were closed before that day. */
    public List<YieldBook.Seen> finishedBefore(LocalDate day) {
        return jdbc.sql("""
                        select m.id as material, j.job_id as job, j.charged_quantity as charged, j.net_quantity as net,
                               m.starting_yield as starting, b.closed_on as "on"
                        from job_material j join material m on m.id = j.material_id
                        join job b on b.id = j.job_id and b.state = 'closed' and b.closed_on < ?
                        where j.net_quantity > 0 and j.charged_quantity > 0 and j.net_quantity <= j.charged_quantity
                        order by b.closed_on, j.job_id, m.id""").param(day).query(YieldBook.Seen.class).list();
    }

    private static String matching() {
        return "where material ilike :like or supplier ilike :like or receipt_number ilike :like or job_number ilike :like";
    }

    private static String like(String search) {
        return "%" + search.replaceAll("([\\\\%_])", "\\\\$1") + "%";
    }

    private static String sql(Kind kind) {
        return Map.of(Kind.PURCHASES, PURCHASES, Kind.USES, USES, Kind.RETURNS, RETURNS, Kind.OFFCUTS, OFFCUTS)
                .getOrDefault(kind, PURCHASES);
    }

    /**
     * One coming or going. Amounts in the shop's currency: paid, priced from stock, or credited.
     *
     * @param size an offcut's size; of a use, whether it came from job or stock
     * @param goneOn when a kept offcut was used up
     */
    public record Row(
            UUID id,
            LocalDate onDate,
            String material,
            String unit,
            BigDecimal quantity,
            @Nullable BigDecimal unitPrice,
            @Nullable BigDecimal amount,
            String supplier,
            String receiptNumber,
            @Nullable String jobNumber,
            @Nullable BigDecimal net,
            String size,
            String note,
            @Nullable LocalDate goneOn) {

        public @Nullable UnitPrice price() {
            return unitPrice == null ? null : UnitPrice.of(unitPrice);
        }

        public @Nullable Money money() {
            return amount == null ? null : Money.of(amount);
        }
    }

    public record StockRow(
            UUID id,
            String name,
            String unit,
            BigDecimal bought,
            BigDecimal taken,
            BigDecimal returned,
            BigDecimal here) {}

    /** Quantities in the material's own unit; both yields as a share of 1. */
    public record YieldRow(
            UUID id,
            String name,
            String unit,
            BigDecimal startingYield,
            String yieldBasis,
            int jobs,
            BigDecimal net,
            BigDecimal charged,
            BigDecimal yield) {}
}
