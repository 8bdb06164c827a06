package org.tallywright.demo;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Jobs with their stages, pieces, measures and punch lists. */
final class DemoJobs {
    private static final Map<String, String> STATES =
            Map.of("finished", "closed", "running", "running", "bidding", "bidding", "lead", "lead");

    private DemoJobs() {}

    static void load(DemoLedger ledger) {
        ledger.knowAll("stage/", "select id, name from stage");
        ledger.knowAll("piece kind/", "select id, name from piece_kind");
        jobs(ledger);
        stages(ledger);
        pieces(ledger);
        measures(ledger);
        DemoSite.load(ledger);
        punchList(ledger);
    }

    /** The number comes from the year the job was opened in this telling; the sequence runs on over the years. */
    static String number(LocalDate opened, int sequence) {
        return String.format(Locale.ROOT, "%02d-%03d", opened.getYear() % 100, sequence);
    }

    private static void jobs(DemoLedger ledger) {
        List<Object[]> rows = DemoLedger.list();
        for (DemoRow row : DemoFile.rows("jobs")) {
            LocalDate opened = ledger.date(row.get("opened_offset"));
            int sequence = Integer.parseInt(row.get("sequence"));
            rows.add(new Object[] {
                ledger.make("job/" + row.get("key")),
                opened.getYear(),
                sequence,
                number(opened, sequence),
                ledger.id("client/" + row.get("client")),
                ledger.id("site/" + row.get("client")),
                row.get("title"),
                STATES.get(row.get("state")),
                DemoLedger.day(opened),
                DemoLedger.day(ledger.dateOrNull(row.get("accepted_offset"))),
                DemoLedger.day(ledger.dateOrNull(row.get("promised_offset"))),
                DemoLedger.day(ledger.dateOrNull(row.get("closed_offset"))),
                row.get("notes")
            });
        }
        ledger.insert("""
                insert into job (id, year, sequence, number, client_id, site_id, title, state, opened_on, accepted_on,
                    promised_on, closed_on, note, version) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 0)""", rows);
    }

    /** A stage is done on the day the next one was entered; the last one of a closed job on the day it closed. */
    private static void stages(DemoLedger ledger) {
        Map<String, DemoRow> entered = new HashMap<>();
        for (DemoRow row : DemoFile.rows("stage_changes")) {
            entered.put(row.get("job") + "/" + row.get("stage"), row);
        }
        List<Object[]> rows = DemoLedger.list();
        List<Object[]> events = DemoLedger.list();
        List<String> names = ledger.jdbc().queryForList("select name from stage order by position", String.class);
        for (DemoRow job : DemoFile.rows("jobs")) {
            String key = job.get("key");
            UUID jobId = ledger.id("job/" + key);
            for (int i = 0; i < names.size(); i++) {
                DemoRow change = entered.get(key + "/" + names.get(i));
                LocalDate on = change == null ? null : ledger.date(change.get("day_offset"));
                LocalDate done = on == null ? null : doneOn(ledger, job, names.subList(i + 1, names.size()), entered);
                UUID by = change == null ? null : ledger.id("person/" + change.get("person"));
                UUID stage = ledger.id("stage/" + names.get(i));
                rows.add(new Object[] {
                    jobId, stage, DemoLedger.day(on), by, DemoLedger.day(done), done == null ? null : by
                });
                if (change != null) {
                    events.add(new Object[] {
                        ledger.make("event/" + key + names.get(i)),
                        jobId,
                        stage,
                        DemoLedger.day(on),
                        DemoLedger.stamp(ledger.at(change.get("day_offset"), 990)),
                        by
                    });
                }
            }
        }
        ledger.insert("""
                insert into job_stage (job_id, stage_id, entered_on, entered_by, done_on, done_by, version)
                values (?, ?, ?, ?, ?, ?, 0)""", rows);
        ledger.insert("""
                insert into job_event (id, job_id, stage_id, kind, to_state, on_date, at, person_id)
                values (?, ?, ?, 'stage', 'entered', ?, ?, ?)""", events);
    }

    private static @Nullable LocalDate doneOn(
            DemoLedger ledger, DemoRow job, List<String> later, Map<String, DemoRow> entered) {
        for (String stage : later) {
            DemoRow change = entered.get(job.get("key") + "/" + stage);
            if (change != null) {
                return ledger.date(change.get("day_offset"));
            }
        }
        return ledger.dateOrNull(job.getOrDefault("closed_offset", ""));
    }

    private static void pieces(DemoLedger ledger) {
        List<Object[]> rows = DemoLedger.list();
        for (DemoRow row : DemoFile.rows("pieces")) {
            String kind = row.get("kind");
            String capital = kind.substring(0, 1).toUpperCase(Locale.ROOT) + kind.substring(1);
            rows.add(new Object[] {
                ledger.make("piece/" + row.get("job") + "/" + row.get("key")),
                ledger.id("job/" + row.get("job")),
                ledger.idOrNull("piece kind/" + capital) != null
                        ? ledger.idOrNull("piece kind/" + capital)
                        : ledger.idOrNull("piece kind/" + kind),
                row.get("name"),
                DemoLedger.length(row.get("width")),
                DemoLedger.length(row.get("height")),
                DemoLedger.length(row.get("depth")),
                row.get("notes"),
                rows.size()
            });
        }
        ledger.insert("""
                insert into piece (id, job_id, piece_kind_id, name, width, height, depth, note, position, version)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, 0)""", rows);
    }

    private static void measures(DemoLedger ledger) {
        List<Object[]> rows = DemoLedger.list();
        Map<String, String> opened = new HashMap<>();
        DemoFile.rows("jobs").forEach(job -> opened.put(job.get("key"), job.get("opened_offset")));
        for (DemoRow row : DemoFile.rows("site_measures")) {
            rows.add(new Object[] {
                ledger.make("measure/" + rows.size()),
                ledger.id("job/" + row.get("job")),
                ledger.idOrNull("piece/" + row.get("job") + "/" + row.get("piece")),
                row.get("name"),
                DemoLedger.length(row.get("value")),
                DemoLedger.day(ledger.date(opened.getOrDefault(row.get("job"), "0"))),
                ledger.id("person/ada")
            });
        }
        ledger.insert("""
                insert into site_measure (id, job_id, piece_id, name, length, measured_on, measured_by, version)
                values (?, ?, ?, ?, ?, ?, ?, 0)""", rows);
    }

    private static void punchList(DemoLedger ledger) {
        List<Object[]> rows = DemoLedger.list();
        for (DemoRow row : DemoFile.rows("punch_items")) {
            LocalDate done = ledger.dateOrNull(row.get("done_offset"));
            LocalDate signed = ledger.dateOrNull(row.get("signed_off_offset"));
            rows.add(new Object[] {
                ledger.make("punch/" + rows.size()),
                ledger.id("job/" + row.get("job")),
                ledger.idOrNull("piece/" + row.get("job") + "/" + row.get("piece")),
                row.get("text"),
                DemoLedger.day(ledger.date(row.get("raised_offset"))),
                ledger.id("person/ada"),
                DemoLedger.day(done),
                done == null ? null : ledger.id("person/ada"),
                DemoLedger.day(signed)
            });
        }
        ledger.insert("""
                insert into punch_item (id, job_id, piece_id, text, raised_on, raised_by, done_on, done_by, signed_off_on, version)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, 0)""", rows);
    }
}
