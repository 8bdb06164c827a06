package org.tallywright.catalog;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;

/** Looks up the shop's materials and what they cost on a day. */
@Component
@Transactional(readOnly = true)
public class Materials {
    private static final String ORDER = " order by material_group, lower(name)";

    private final JdbcClient jdbc;

    Materials(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Every material by group and name, those out of use too. */
    public List<MaterialCard> all() {
        return cards("", Map.of());
    }

    /** The materials in use, by group and name. */
    public List<MaterialCard> active() {
        return cards("where active", Map.of());
    }

    public Optional<MaterialCard> find(UUID id) {
        return cards("where id = :id", Map.of("id", id)).stream().findFirst();
    }

    /** @throws NotHere where there is none of that id */
    public MaterialCard card(UUID id) {
        return find(id).orElseThrow(() -> new NotHere("material"));
    }

    /** By its short code, such as {@code red_oak_54}; codes never change. */
    public Optional<MaterialCard> coded(String code) {
        return cards("where code = :code", Map.of("code", code)).stream().findFirst();
    }

    /** Those of the given ids that exist, by id. */
    public Map<UUID, MaterialCard> byId(Collection<UUID> ids) {
        Map<UUID, MaterialCard> found = new LinkedHashMap<>();
        if (!ids.isEmpty()) {
            cards("where id in (:ids)", Map.of("ids", ids)).forEach(card -> found.put(card.id(), card));
        }
        return found;
    }

    /** The price in force on that day: the latest from that day or before; absent before the first. */
    public Optional<UnitPrice> priceOn(UUID materialId, LocalDate day) {
        return jdbc.sql("""
                        select unit_price from material_price
                        where material_id = :id and from_date <= :day order by from_date desc limit 1""")
                .param("id", materialId)
                .param("day", day)
                .query((row, number) -> new UnitPrice(row.getBigDecimal(1)))
                .optional();
    }

    /** The prices in force on that day, of all materials that have one. */
    public Map<UUID, UnitPrice> pricesOn(LocalDate day) {
        Map<UUID, UnitPrice> prices = new HashMap<>();
        jdbc.sql("""
                        select distinct on (material_id) material_id, unit_price from material_price
                        where from_date <= :day order by material_id, from_date desc""").param("day", day).query(row -> {
            prices.put(row.getObject(1, UUID.class), new UnitPrice(row.getBigDecimal(2)));
        });
        return prices;
    }

    /** All dated prices of a material, the newest first. */
    public List<MaterialPrice> history(UUID materialId) {
        return jdbc.sql("select * from material_price where material_id = :id order by from_date desc")
                .param("id", materialId)
                .query((row, number) -> new MaterialPrice(
                        row.getObject("from_date", LocalDate.class),
                        new UnitPrice(row.getBigDecimal("unit_price")),
                        row.getString("basis")))
                .list();
    }

    private List<MaterialCard> cards(String where, Map<String, ?> values) {
        return jdbc.sql("select * from material " + where + ORDER)
                .params(values)
                .query(Materials::card)
                .list();
    }

    private static MaterialCard card(ResultSet row, int number) throws SQLException {
        return new MaterialCard(
                row.getObject("id", UUID.class),
                row.getString("code"),
                row.getString("name"),
                row.getString("material_group"),
                row.getString("unit"),
                new Yield(row.getBigDecimal("starting_yield")),
                row.getBigDecimal("purchase_step").stripTrailingZeros(),
                row.getBoolean("stocked"),
                row.getString("supplier"),
                row.getString("yield_basis"),
                row.getBoolean("active"),
                row.getInt("version"));
    }
}
