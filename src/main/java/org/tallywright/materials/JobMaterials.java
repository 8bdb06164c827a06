package org.tallywright.materials;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.GrossQuantity;
import org.tallywright.shared.Money;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Yield;

/** What each material of one job came to. */
@Component
public class JobMaterials {
    private final JdbcClient jdbc;

    JobMaterials(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public List<Row> of(UUID job) {
        return jdbc.sql("""
                        select m.id, m.name, m.unit, m.material_group, m.starting_yield, j.* from job_material j
                        join material m on m.id = j.material_id
                        where j.job_id = ? order by m.material_group, lower(m.name)""").param(job).query(JobMaterials::row).list();
    }

    private static Row row(ResultSet row, int n) throws SQLException {
        BigDecimal net = row.getBigDecimal("net_quantity");
        return new Row(
                row.getObject("id", UUID.class),
                row.getString("name"),
                row.getString("unit"),
                row.getString("material_group"),
                new Yield(row.getBigDecimal("starting_yield")),
                new Quantity(row.getBigDecimal("bought_quantity")),
                new Quantity(row.getBigDecimal("stock_quantity")),
                new Quantity(row.getBigDecimal("returned_quantity")),
                new Quantity(row.getBigDecimal("kept_quantity")),
                new Quantity(row.getBigDecimal("charged_quantity")),
                net == null ? null : new Quantity(net),
                new Money(row.getBigDecimal("cost_amount")));
    }

    /**
     * One material on a job, in its own unit.
     *
     * @param group of the catalogue; "other" is what is not material: delivery, disposal
     * @param charged bought + from stock - sent back - kept
     * @param net in the finished work, null until somebody said so
     * @param cost purchases and stock less credits
     */
    public record Row(
            UUID materialId,
            String name,
            String unit,
            String group,
            Yield startingYield,
            Quantity bought,
            Quantity fromStock,
            Quantity sentBack,
            Quantity kept,
            Quantity charged,
            @Nullable Quantity net,
            Money cost) {

        /** Net / charged; empty while either is missing, or where more is said to be in the work than was charged. */
        public Optional<Yield> yield() {
            Quantity inTheWork = net == null ? Quantity.ZERO : net;
            boolean known = !inTheWork.isZero() && inTheWork.compareTo(charged) <= 0;
            return known
                    ? Optional.of(Yield.observed(new NetQuantity(inTheWork), new GrossQuantity(charged)))
                    : Optional.empty();
        }
    }
}
