package org.tallywright.demo;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** The working sums of the demo's jobs: their rates, and their lines of material and of other costs. */
final class DemoEstimates {
    private DemoEstimates() {}

    static void load(DemoLedger ledger) {
        estimates(ledger);
        estimateLines(ledger);
        option(ledger);
    }

    /** The linen cupboard is being bid; its client may have the top shelves lined or not. */
    private static void option(DemoLedger ledger) {
        UUID job = ledger.id("job/linen");
        UUID option = ledger.make("option/linen/cedar");
        UUID line = ledger.make("option/linen/cedar/line");
        List<Object[]> options = DemoLedger.list();
        options.add(new Object[] {option, job, "Cedar lining", "The two top shelves lined, left without finish.", 1});
        List<Object[]> others = DemoLedger.list();
        others.add(new Object[] {line, job, "Cedar lining, cut to size", new BigDecimal("96.00"), 90});
        List<Object[]> lines = DemoLedger.list();
        lines.add(new Object[] {option, job, line});
        ledger.insert(
                "insert into estimate_other (id, job_id, description, amount, position, version) values (?, ?, ?, ?, ?, 0)",
                others);
        ledger.insert(
                "insert into estimate_option (id, job_id, name, words, position, version) values (?, ?, ?, ?, ?, 0)",
                options);
        ledger.insert(
                "insert into estimate_option_line (option_id, job_id, estimate_other_id) values (?, ?, ?)", lines);
    }

    /** One estimate for each job that has lines; rates from the job's last bid, the linen cupboard's from its crew. */
    private static void estimates(DemoLedger ledger) {
        Map<String, DemoRow> last = new HashMap<>();
        DemoFile.rows("bids").forEach(bid -> last.put(bid.get("job"), bid));
        List<Object[]> rows = DemoLedger.list();
        for (DemoRow job : DemoFile.rows("jobs")) {
            String key = job.get("key");
            DemoRow bid = last.get(key);
            boolean drafted = DemoFile.rows("estimate_lines").stream()
                    .anyMatch(line -> line.get("job").equals(key));
            if (drafted) {
                rows.add(new Object[] {
                    ledger.id("job/" + key),
                    bid == null ? null : new BigDecimal(bid.get("labour_rate")),
                    bid == null ? new BigDecimal(15) : new BigDecimal(bid.get("overhead_rate")),
                    bid == null ? new BigDecimal(5) : new BigDecimal(bid.get("contingency_percent")),
                    bid == null ? new BigDecimal(16) : new BigDecimal(bid.get("margin_percent"))
                });
            }
        }
        ledger.insert("""
                insert into estimate (job_id, labour_rate, overhead_rate, contingency_percent, margin_percent, rounding_step_amount, version)
                values (?, ?, ?, ?, ?, 10, 0)""", rows);
        List<Object[]> crew = DemoLedger.list();
        crew.add(new Object[] {ledger.id("job/linen"), ledger.id("person/ada"), 60});
        crew.add(new Object[] {ledger.id("job/linen"), ledger.id("person/jonas"), 40});
        ledger.insert("insert into estimate_crew (job_id, person_id, share_percent) values (?, ?, ?)", crew);
    }

    private static void estimateLines(DemoLedger ledger) {
        List<Object[]> lines = DemoLedger.list();
        List<Object[]> others = DemoLedger.list();
        int n = 0;
        for (DemoRow row : DemoFile.rows("estimate_materials")) {
            UUID job = ledger.id("job/" + row.get("job"));
            UUID id = ledger.make("estimate material/" + n++);
            if (row.get("group").equals("other")) {
                String name = ledger.jdbc()
                        .queryForObject("select name from material where code = ?", String.class, row.get("material"));
                others.add(new Object[] {id, job, name, new BigDecimal(row.get("amount")), n});
            } else {
                lines.add(new Object[] {
                    id,
                    job,
                    ledger.id("material/" + row.get("material")),
                    new BigDecimal(row.get("net_quantity")),
                    new BigDecimal(row.get("yield_at_bid")),
                    new BigDecimal(row.get("buy_quantity")),
                    new BigDecimal(row.get("unit_price")),
                    new BigDecimal(row.get("amount")),
                    n
                });
            }
        }
        ledger.insert("""
                insert into estimate_material (id, job_id, material_id, net_quantity, yield, purchase_quantity, unit_price, amount,
                    position, version) values (?, ?, ?, ?, ?, ?, ?, ?, ?, 0)""", lines);
        ledger.insert(
                "insert into estimate_other (id, job_id, description, amount, position, version) values (?, ?, ?, ?, ?, 0)",
                others);
    }
}
