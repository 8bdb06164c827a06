package org.tallywright.catalog;

import static java.util.stream.Collectors.toMap;

import java.math.BigDecimal;
import java.sql.Date;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.Ids;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;
import org.tallywright.shared.Units;
import org.tallywright.trail.Trail;

/** Fills an empty catalogue with what a small finish-carpentry shop does and buys, as a start to be replaced. */
@Component
public class CatalogSeed {
    private final JdbcTemplate jdbc;
    private final ShopClock clock;
    private final ObjectProvider<ShopConventions> conventions;
    private final Trail trail;

    CatalogSeed(JdbcTemplate jdbc, ShopClock clock, ObjectProvider<ShopConventions> conventions, Trail trail) {
        this.jdbc = jdbc;
        this.clock = clock;
        this.conventions = conventions;
        this.trail = trail;
    }

    /**
     * Loads the starting catalogue as the shop itself, in the units of the shop, its prices from today on. A shop that has a stage
     * already is left alone.
     *
     * @return whether anything was loaded
     */
    @Transactional
    public boolean load() {
        trail.byShop();
        return fill();
    }

    /** As {@link #load()}, where somebody asked for it. */
    @Transactional
    public boolean load(UUID by) {
        trail.by(by);
        return fill();
    }

    private boolean fill() {
        if (Boolean.TRUE.equals(jdbc.queryForObject("select exists (select from stage)", Boolean.class))) {
            return false;
        }
        Map<String, UUID> stages = stages();
        Units units = conventions.getIfAvailable(() -> ShopConventions.DEFAULT).units();
        Map<String, UUID> kinds = taskKinds(stages, units);
        waits(kinds);
        precedence(kinds);
        pieceKinds(kinds);
        materials(units);
        return true;
    }

    private Map<String, UUID> stages() {
        Map<String, UUID> ids = new LinkedHashMap<>();
        SeedFile.rows("stages").forEach(row -> ids.put(row.get("name"), Ids.next()));
        List<Object[]> rows = new ArrayList<>();
        ids.forEach((name, id) -> rows.add(new Object[] {id, name, rows.size() + 1}));
        jdbc.batchUpdate("insert into stage (id, name, position, active, version) values (?, ?, ?, true, 0)", rows);
        return ids;
    }

    private Map<String, UUID> taskKinds(Map<String, UUID> stages, Units units) {
        Map<String, CSVRecord> cautions =
                SeedFile.rows("cautions").stream().collect(toMap(row -> row.get("key"), Function.identity()));
        Map<String, UUID> ids = new HashMap<>();
        List<Object[]> rows = new ArrayList<>();
        for (CSVRecord row : SeedFile.rows("task_kinds")) {
            UUID id = Ids.next();
            ids.put(row.get("code"), id);
            rows.add(taskKind(id, row, known(stages, row.get("stage")), cautions.get(row.get("caution")), units));
        }
        jdbc.batchUpdate("""
                insert into task_kind (id, code, name, stage_id, unit, unit_hours, low_unit_hours, high_unit_hours,
                    place, hour_class, drivers, basis, caution, caution_source, active, version)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, true, 0)""", rows);
        return ids;
    }

    private Object[] taskKind(UUID id, CSVRecord row, UUID stage, @Nullable CSVRecord caution, Units units) {
        Unit written = Unit.of(row.get("unit"));
        Unit unit = written.in(units);
        Function<String, BigDecimal> hours =
                column -> UnitHours.of(row.get(column)).convert(written, unit).amount();
        String basis = row.get("basis").isEmpty() ? TaskKindCard.NO_SOURCE : row.get("basis");
        return new Object[] {
            id,
            row.get("code"),
            row.get("name"),
            stage,
            unit.code(),
            hours.apply("unit_hours"),
            hours.apply("low"),
            hours.apply("high"),
            row.get("place"),
            row.get("hour_class"),
            row.get("drivers"),
            basis,
            caution == null ? "" : caution.get("text"),
            caution == null ? "" : caution.get("source")
        };
    }

    private void waits(Map<String, UUID> kinds) {
        Map<String, Integer> positions = new HashMap<>();
        List<Object[]> rows = new ArrayList<>();
        for (CSVRecord row : SeedFile.rows("waits")) {
            int position = positions.merge(row.get("task_kind"), 1, Integer::sum);
            rows.add(new Object[] {
                Ids.next(),
                known(kinds, row.get("task_kind")),
                position,
                row.get("what"),
                Integer.valueOf(row.get("minutes")),
                row.get("basis")
            });
        }
        jdbc.batchUpdate(
                "insert into task_kind_wait (id, task_kind_id, position, what, minutes, basis) values (?, ?, ?, ?, ?, ?)",
                rows);
    }

    private void precedence(Map<String, UUID> kinds) {
        List<Object[]> rows = new ArrayList<>();
        SeedFile.rows("precedence")
                .forEach(row ->
                        rows.add(new Object[] {known(kinds, row.get("task_kind")), known(kinds, row.get("before"))}));
        jdbc.batchUpdate("insert into task_kind_before (task_kind_id, before_kind_id) values (?, ?)", rows);
    }

    /** Lines of the kind {@code *} belong to every kind; the lines of each stand in the order of the stages. */
    private void pieceKinds(Map<String, UUID> kinds) {
        List<CSVRecord> forEvery = new ArrayList<>();
        Map<String, List<CSVRecord>> byName = new LinkedHashMap<>();
        for (CSVRecord row : SeedFile.rows("piece_kinds")) {
            String name = row.get("piece_kind");
            (name.equals("*") ? forEvery : byName.computeIfAbsent(name, n -> new ArrayList<>())).add(row);
        }
        Map<String, Integer> order = orderOfWork();
        List<Object[]> names = new ArrayList<>();
        List<Object[]> lines = new ArrayList<>();
        byName.forEach((name, own) -> {
            UUID id = Ids.next();
            names.add(new Object[] {id, name});
            List<CSVRecord> all = new ArrayList<>(own);
            all.addAll(forEvery);
            all.sort(Comparator.comparing(row -> known(order, row.get("task_kind"))));
            for (CSVRecord row : all) {
                lines.add(new Object[] {
                    Ids.next(),
                    id,
                    known(kinds, row.get("task_kind")),
                    all.indexOf(row) + 1,
                    row.get("measure"),
                    new BigDecimal(row.get("factor")),
                    row.get("round_up").equals("yes")
                });
            }
        });
        jdbc.batchUpdate("insert into piece_kind (id, name, active, version) values (?, ?, true, 0)", names);
        jdbc.batchUpdate("""
                insert into piece_kind_task (id, piece_kind_id, task_kind_id, position, measure, factor, round_up)
                values (?, ?, ?, ?, ?, ?, ?)""", lines);
    }

    private static Map<String, Integer> orderOfWork() {
        Map<String, Integer> order = new HashMap<>();
        SeedFile.rows("task_kinds").forEach(row -> order.put(row.get("code"), order.size()));
        return order;
    }

    private void materials(Units units) {
        List<Object[]> rows = new ArrayList<>();
        List<Object[]> prices = new ArrayList<>();
        for (CSVRecord row : SeedFile.rows("materials")) {
            UUID id = Ids.next();
            rows.add(new Object[] {
                id,
                row.get("code"),
                row.get("name"),
                row.get("group"),
                Unit.of(row.get("unit")).in(units).code(),
                new BigDecimal(row.get("starting_yield")),
                new BigDecimal(row.get("purchase_step")),
                row.get("stocked").equals("yes"),
                row.get("supplier"),
                row.get("yield_basis")
            });
            prices.add(new Object[] {id, Date.valueOf(clock.today()), price(row, units), row.get("price_basis")});
        }
        jdbc.batchUpdate("""
                insert into material (id, code, name, material_group, unit, starting_yield, purchase_step, stocked,
                    supplier, yield_basis, active, version)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, true, 0)""", rows);
        jdbc.batchUpdate(
                "insert into material_price (material_id, from_date, unit_price, basis) values (?, ?, ?, ?)", prices);
    }

    /** A price for each foot or board foot is the dearer one for each metre or cubic metre of the same wood. */
    private BigDecimal price(CSVRecord row, Units units) {
        Unit written = Unit.of(row.get("unit"));
        BigDecimal price = new BigDecimal(row.get("price"));
        return written.in(units) == written ? price : written.counterpart().toCounterpart(price);
    }

    private static <T> T known(Map<String, T> by, String key) {
        T found = by.get(key);
        if (found == null) {
            throw new IllegalStateException("the starting catalogue names " + key + " but does not have it");
        }
        return found;
    }
}
