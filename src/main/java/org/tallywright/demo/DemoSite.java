package org.tallywright.demo;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What was measured at the sites: openings with their readings, the air, and the solid parts that move in it. */
final class DemoSite {
    private DemoSite() {}

    static void load(DemoLedger ledger) {
        openings(ledger);
        readings(ledger);
        marks(ledger);
        air(ledger);
        parts(ledger);
    }

    private static void openings(DemoLedger ledger) {
        List<Object[]> rows = DemoLedger.list();
        Map<String, String> opened = new HashMap<>();
        DemoFile.rows("jobs").forEach(job -> opened.put(job.get("key"), job.get("opened_offset")));
        for (DemoRow row : DemoFile.rows("openings")) {
            rows.add(new Object[] {
                ledger.make("opening/" + row.get("job") + "/" + row.get("key")),
                ledger.id("job/" + row.get("job")),
                ledger.idOrNull("piece/" + row.get("job") + "/" + row.get("piece")),
                row.get("place"),
                DemoLedger.length(row.get("good_to")),
                DemoLedger.day(ledger.date(opened.getOrDefault(row.get("job"), "0"))),
                ledger.id("person/ada"),
                row.get("note")
            });
        }
        ledger.insert("""
                insert into opening (id, job_id, piece_id, place, good_to, measured_on, measured_by, note, version)
                values (?, ?, ?, ?, ?, ?, ?, ?, 0)""", rows);
    }

    private static void readings(DemoLedger ledger) {
        List<Object[]> rows = DemoLedger.list();
        for (DemoRow row : DemoFile.rows("opening_readings")) {
            rows.add(new Object[] {
                ledger.make("opening reading/" + rows.size()),
                ledger.id("opening/" + row.get("job") + "/" + row.get("key")),
                row.get("reading"),
                DemoLedger.signedLength(row.get("value"))
            });
        }
        ledger.insert("insert into opening_reading (id, opening_id, reading, length) values (?, ?, ?, ?)", rows);
    }

    private static void marks(DemoLedger ledger) {
        List<Object[]> rows = DemoLedger.list();
        Map<String, Integer> next = new HashMap<>();
        for (DemoRow row : DemoFile.rows("opening_marks")) {
            String opening = row.get("job") + "/" + row.get("key");
            rows.add(new Object[] {
                ledger.make("opening mark/" + rows.size()),
                ledger.id("opening/" + opening),
                next.merge(opening, 1, Integer::sum) - 1,
                row.get("kind"),
                row.get("name"),
                DemoLedger.length(row.get("across")),
                DemoLedger.length(row.get("up"))
            });
        }
        ledger.insert(
                "insert into opening_mark (id, opening_id, position, kind, name, across, up) values (?, ?, ?, ?, ?, ?, ?)",
                rows);
    }

    private static void air(DemoLedger ledger) {
        List<Object[]> rows = DemoLedger.list();
        for (DemoRow row : DemoFile.rows("air_readings")) {
            BigDecimal celsius = DemoLedger.number(row.get("fahrenheit"))
                    .subtract(BigDecimal.valueOf(32))
                    .multiply(BigDecimal.valueOf(5))
                    .divide(BigDecimal.valueOf(9), 4, RoundingMode.HALF_UP);
            rows.add(new Object[] {
                ledger.make("air/" + rows.size()),
                ledger.id("job/" + row.get("job")),
                row.get("place"),
                DemoLedger.day(ledger.date(row.get("offset"))),
                ledger.id("person/ada"),
                celsius,
                DemoLedger.number(row.get("humidity")),
                row.get("note")
            });
        }
        ledger.insert("""
                insert into air_reading (id, job_id, place, taken_on, taken_by, celsius, humidity, note, version)
                values (?, ?, ?, ?, ?, ?, ?, ?, 0)""", rows);
    }

    private static void parts(DemoLedger ledger) {
        List<Object[]> rows = DemoLedger.list();
        for (DemoRow row : DemoFile.rows("solid_parts")) {
            rows.add(new Object[] {
                ledger.make("solid part/" + rows.size()),
                ledger.id("job/" + row.get("job")),
                ledger.idOrNull("piece/" + row.get("job") + "/" + row.get("piece")),
                row.get("name"),
                row.get("species"),
                row.get("cut"),
                DemoLedger.length(row.get("width")),
                DemoLedger.number(row.get("moisture")),
                row.get("note")
            });
        }
        ledger.insert("""
                insert into solid_part (id, job_id, piece_id, name, species, cut, width, moisture, note, version)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, 0)""", rows);
    }
}
