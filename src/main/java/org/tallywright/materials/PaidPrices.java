package org.tallywright.materials;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.UnitPrice;

/** What one material cost, purchase by purchase; beside it the catalogue keeps the prices that estimates use. */
@Component
public class PaidPrices {
    private final JdbcClient jdbc;

    PaidPrices(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The last hundred purchases, newest first. */
    public List<Row> of(UUID material) {
        return jdbc.sql("""
                        select p.id, p.bought_on as on, p.unit_price, p.quantity, p.supplier, j.number as job_number,
                               lag(p.unit_price) over (order by p.bought_on, p.id) as before
                        from purchase p left join job j on j.id = p.job_id
                        where p.material_id = ? order by p.bought_on desc, p.id desc limit 100""").param(material).query(Row.class).list();
    }

    /**
     * How prices moved from one purchase to the next before that day: for each material how many steps and the sum of their
     * squared logarithms, each cut at double or half. Two purchases of one day make a step too.
     */
    public List<Steps> stepsBefore(LocalDate day) {
        return jdbc.sql("""
                        select material_id as material, count(*)::int as steps,
                               sum(power(greatest(-ln(2.0), least(ln(2.0), ln(unit_price / before))), 2))::float8 as squares
                        from (select material_id, unit_price,
                                     lag(unit_price) over (partition by material_id order by bought_on, id) as before
                              from purchase where bought_on < ? and unit_price > 0) p
                        where before is not null group by material_id order by material_id""").param(day).query(Steps.class).list();
    }

    /** @param squares sum of the squared ln(unit price / the one before) */
    public record Steps(UUID material, int steps, double squares) {}

    /** What was last paid for it, up to and with that day. */
    public Optional<UnitPrice> lastUpTo(UUID material, LocalDate day) {
        return jdbc.sql("""
                        select unit_price from purchase where material_id = ? and bought_on <= ?
                        order by bought_on desc, id desc limit 1""")
                .params(material, day)
                .query(BigDecimal.class)
                .optional()
                .map(UnitPrice::of);
    }

    /** One purchase; {@code before} is the unit price of the purchase before it. */
    public record Row(
            UUID id,
            LocalDate on,
            BigDecimal unitPrice,
            BigDecimal quantity,
            String supplier,
            @Nullable String jobNumber,
            @Nullable BigDecimal before) {

        public UnitPrice price() {
            return UnitPrice.of(unitPrice);
        }

        /** Against the purchase before, in whole percent; empty for the first. */
        public String change() {
            if (before == null || before.signum() == 0) {
                return "";
            }
            BigDecimal percent = unitPrice.subtract(before).movePointRight(2).divide(before, 0, RoundingMode.HALF_UP);
            return (percent.signum() > 0 ? "+" : "") + percent + " %";
        }
    }

    /** Lowest, middle and highest of the purchases shown. */
    public record Range(UnitPrice lowest, UnitPrice middle, UnitPrice highest, int purchases) {

        /** @param rows at least one */
        public static Range of(List<Row> rows) {
            List<UnitPrice> prices = rows.stream().map(Row::price).sorted().toList();
            return new Range(
                    prices.get(0), prices.get((prices.size() - 1) / 2), prices.get(prices.size() - 1), prices.size());
        }
    }
}
