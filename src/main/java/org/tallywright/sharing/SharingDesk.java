package org.tallywright.sharing;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Typed;
import org.tallywright.trail.Trail;

/** What the owner chooses to tell the client: notes and the next visit. */
@Service
@Transactional
public class SharingDesk {
    private final ClientNoteRows notes;
    private final JdbcClient jdbc;
    private final ShopClock clock;
    private final Trail trail;

    SharingDesk(ClientNoteRows notes, JdbcClient jdbc, ShopClock clock, Trail trail) {
        this.notes = notes;
        this.jdbc = jdbc;
        this.clock = clock;
        this.trail = trail;
    }

    /** The same id with the same words is a repeat. */
    public void write(UUID id, UUID job, String typed, boolean shown, UUID by) {
        trail.by(by);
        String text = Typed.block(typed, 2000);
        if (text.isBlank()) {
            throw new Refused("text", "Write a sentence for the client.");
        }
        Optional<ClientNote> there = notes.findById(id);
        if (there.isEmpty()) {
            notes.save(new ClientNote(id, job, clock.today(), text, shown, by));
        } else if (!there.get().says(job, text, shown)) {
            throw new Stale("note");
        }
    }

    public void show(UUID job, UUID note, boolean shown, UUID by) {
        trail.by(by);
        notes.findByIdAndJobId(note, job).orElseThrow(() -> new NotHere("note")).show(shown);
    }

    public void remove(UUID job, UUID note, UUID by) {
        trail.by(by);
        notes.delete(notes.findByIdAndJobId(note, job).orElseThrow(() -> new NotHere("note")));
    }

    /** A range of days, so that a client is promised no hour that weather or glue may move. */
    public void visit(UUID job, LocalDate from, LocalDate to, String note, UUID by) {
        trail.by(by);
        if (to.isBefore(from)) {
            throw new Refused("to", "The last day is before the first.");
        }
        jdbc.sql("""
                        insert into next_visit (job_id, from_date, to_date, note, version) values (?, ?, ?, ?, 0)
                        on conflict (job_id) do update set from_date = excluded.from_date, to_date = excluded.to_date,
                            note = excluded.note, version = next_visit.version + 1""").params(job, from, to, Typed.line(note, 200)).update();
    }

    public void noVisit(UUID job, UUID by) {
        trail.by(by);
        jdbc.sql("delete from next_visit where job_id = ?").param(job).update();
    }
}
