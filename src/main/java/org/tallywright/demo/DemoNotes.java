package org.tallywright.demo;

import java.util.List;

/** Notes that the clients were sent. */
final class DemoNotes {
    private DemoNotes() {}

    static void load(DemoLedger ledger) {
        List<Object[]> rows = DemoLedger.list();
        for (DemoRow row : DemoFile.rows("notes_for_client")) {
            rows.add(new Object[] {
                ledger.make("note/" + rows.size()),
                ledger.id("job/" + row.get("job")),
                DemoLedger.day(ledger.date(row.get("day_offset"))),
                row.get("text"),
                ledger.id("person/ada")
            });
        }
        ledger.insert(
                "insert into client_note (id, job_id, on_date, text, shown, written_by, version) values (?, ?, ?, ?, true, ?, 0)",
                rows);
    }
}
