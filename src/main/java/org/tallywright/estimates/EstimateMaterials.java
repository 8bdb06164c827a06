package org.tallywright.estimates;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;

/** What a material line takes from the catalogue: starting yield, purchase step, and the price dated up to a day. */
@Component
public class EstimateMaterials {
    private static final String SELECT = """
            select m.id, m.name, m.material_group, m.unit, m.starting_yield, m.yield_basis, m.purchase_step, m.active,
                p.unit_price, p.from_date
            from material m
            left join lateral (select unit_price, from_date from material_price
                where material_id = m.id and from_date <= :day order by from_date desc limit 1) p on true
            """;

    private final JdbcClient jdbc;

    EstimateMaterials(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * @param purchaseStep the smallest quantity that can be bought
     * @param price of one unit, or null where none is dated up to the day
     */
    public record Facts(
            UUID id,
            String name,
            String group,
            String unit,
            Yield startingYield,
            String yieldBasis,
            Quantity purchaseStep,
            boolean active,
            @Nullable UnitPrice price,
            @Nullable LocalDate priceFrom) {}

    public Optional<Facts> find(UUID material, LocalDate day) {
        return jdbc.sql(SELECT + "where m.id = :id")
                .param("day", day)
                .param("id", material)
                .query(EstimateMaterials::facts)
                .optional();
    }

    /** All that can be picked for a new line, by group and name. */
    public List<Facts> offered(LocalDate day) {
        return jdbc.sql(SELECT + "where m.active order by m.material_group, lower(m.name)")
                .param("day", day)
                .query(EstimateMaterials::facts)
                .list();
    }

    private static Facts facts(ResultSet row, int n) throws SQLException {
        var price = row.getBigDecimal("unit_price");
        return new Facts(
                row.getObject("id", UUID.class),
                row.getString("name"),
                row.getString("material_group"),
                row.getString("unit"),
                Yield.of(row.getBigDecimal("starting_yield")),
                row.getString("yield_basis"),
                Quantity.of(row.getBigDecimal("purchase_step")),
                row.getBoolean("active"),
                price == null ? null : UnitPrice.of(price),
                row.getObject("from_date", LocalDate.class));
    }
}
