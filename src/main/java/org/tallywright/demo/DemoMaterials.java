package org.tallywright.demo;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What was bought, taken, sent back and kept, and the estimate's material lines. */
final class DemoMaterials {
    private final DemoLedger ledger;
    private final Map<String, DemoRow> jobs = new HashMap<>();

    private DemoMaterials(DemoLedger ledger) {
        this.ledger = ledger;
        DemoFile.rows("jobs").forEach(job -> jobs.put(job.get("key"), job));
    }

    static void load(DemoLedger ledger) {
        ledger.knowAll("material/", "select id, code from material");
        DemoMaterials materials = new DemoMaterials(ledger);
        materials.purchases();
        materials.uses();
        materials.returnsAndOffcuts();
    }

    private void purchases() {
        List<Object[]> rows = DemoLedger.list();
        for (DemoRow row : DemoFile.rows("purchases")) {
            BigDecimal quantity = new BigDecimal(row.get("quantity"));
            BigDecimal price = new BigDecimal(row.get("unit_price"));
            rows.add(new Object[] {
                ledger.make("purchase/" + rows.size()),
                jobOrStock(row.get("job")),
                ledger.id("material/" + row.get("material")),
                quantity,
                price,
                cents(quantity.multiply(price)),
                row.get("supplier"),
                row.get("receipt"),
                DemoLedger.day(ledger.date(row.get("day_offset"))),
                ledger.id("person/ada")
            });
        }
        ledger.insert("""
                insert into purchase (id, job_id, material_id, quantity, unit_price, amount, supplier, receipt_number, bought_on,
                    bought_by, version) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 0)""", rows);
    }

    /** Stock is charged at its price when the job was accepted, as the scenario's own sums do. */
    private void uses() {
        Map<String, BigDecimal> today = prices();
        List<Object[]> rows = DemoLedger.list();
        for (DemoRow row : DemoFile.rows("uses")) {
            DemoRow job = jobs.getOrDefault(row.get("job"), DemoRow.NONE);
            String accepted = job.getOrDefault("accepted_offset", "0");
            boolean stock = row.get("from").equals("stock");
            rows.add(new Object[] {
                ledger.make("use/" + rows.size()),
                ledger.id("job/" + row.get("job")),
                ledger.id("material/" + row.get("material")),
                new BigDecimal(row.get("quantity")),
                row.get("net_in_work").isEmpty() ? null : new BigDecimal(row.get("net_in_work")),
                row.get("from"),
                stock ? priceAt(today.getOrDefault(row.get("material"), BigDecimal.ZERO), accepted) : null,
                DemoLedger.day(ledger.date(usedOn(job))),
                ledger.id("person/ada")
            });
        }
        ledger.insert("""
                insert into material_use (id, job_id, material_id, quantity, net_quantity, source, unit_price, used_on, used_by,
                    version) values (?, ?, ?, ?, ?, ?, ?, ?, ?, 0)""", rows);
    }

    private static String usedOn(DemoRow job) {
        String closed = job.getOrDefault("closed_offset", "");
        return closed.isEmpty() ? "-1" : closed;
    }

    private static BigDecimal priceAt(BigDecimal today, String offset) {
        BigDecimal factor = BigDecimal.ONE.add(new BigDecimal("0.05")
                .multiply(new BigDecimal(offset))
                .divide(BigDecimal.valueOf(365), 12, RoundingMode.HALF_UP));
        return cents(today.multiply(factor));
    }

    private Map<String, BigDecimal> prices() {
        Map<String, BigDecimal> prices = new HashMap<>();
        ledger.jdbc().query("""
                select distinct on (m.id) m.code, p.unit_price from material m join material_price p on p.material_id = m.id
                order by m.id, p.from_date desc""", row -> {
            prices.put(row.getString(1), row.getBigDecimal(2));
        });
        return prices;
    }

    private void returnsAndOffcuts() {
        List<Object[]> returns = DemoLedger.list();
        List<Object[]> offcuts = DemoLedger.list();
        for (DemoRow row : DemoFile.rows("returns_offcuts")) {
            boolean kept = row.get("to_stock").equals("1");
            Object[] all = {
                ledger.make("back/" + returns.size() + "/" + offcuts.size()),
                jobOrStock(row.get("job")),
                ledger.id("material/" + row.get("material")),
                new BigDecimal(row.get("quantity")),
                new BigDecimal(row.get("credit")),
                DemoLedger.day(ledger.date(row.get("day_offset"))),
                ledger.id("person/ada"),
                row.get("size")
            };
            (kept ? offcuts : returns).add(all);
        }
        ledger.insert("""
                insert into material_return (id, job_id, material_id, quantity, credit_amount, returned_on, returned_by, note, version)
                values (?, ?, ?, ?, ?, ?, ?, ?, 0)""", returns);
        ledger.insert("""
                insert into offcut (id, job_id, material_id, quantity, credit_amount, kept_on, kept_by, size, version)
                values (?, ?, ?, ?, ?, ?, ?, ?, 0)""", offcuts);
    }

    private @Nullable UUID jobOrStock(String job) {
        return job.isEmpty() || job.equals("stock") ? null : ledger.id("job/" + job);
    }

    private static BigDecimal cents(BigDecimal amount) {
        return amount.setScale(2, RoundingMode.HALF_EVEN);
    }
}
