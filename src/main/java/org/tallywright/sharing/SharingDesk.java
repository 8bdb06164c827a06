package org.tallywright.sharing;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Typed;
import org.tallywright.shared.jpa.SaveTurn;
import org.tallywright.trail.Trail;

/** What the owner chooses to tell the client: notes and the next visit. */
@Service
@Transactional
public class SharingDesk {
    private final ClientNoteRows notes;
    private final ClientPage pages;
    private final SaveTurn turn;
    private final JdbcClient jdbc;
    private final ShopClock clock;
    private final Trail trail;

    SharingDesk(ClientNoteRows notes, ClientPage pages, SaveTurn turn, JdbcClient jdbc, ShopClock clock, Trail trail) {
        this.notes = notes;
        this.pages = pages;
        this.turn = turn;
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
            ClientNote kept = there.get();
            throw new Stale(
                    "note",
                    List.of(
                            new Stale.Row("Note", kept.text(), text),
                            new Stale.Row("Client sees it", yesNo(kept.shown()), yesNo(shown))));
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

    /**
     * A range of days, so that a client is promised no hour that weather or glue may move.
     *
     * @param version of the visit that the page showed; null where it showed none
     * @throws Stale where another visit, or none, is announced by now
     */
    public void visit(UUID job, LocalDate from, LocalDate to, String typed, @Nullable Integer version, UUID by) {
        turn.of(job);
        trail.by(by);
        if (to.isBefore(from)) {
            throw new Refused("to", "The last day is before the first.");
        }
        String note = Typed.line(typed, 200);
        ClientPage.Visit kept = pages.visit(job);
        if (kept != null && kept.equals(new ClientPage.Visit(from, to, note, kept.version()))) {
            return;
        }
        unlessChanged(kept, version, from.toString(), to.toString(), note);
        jdbc.sql("""
                        insert into next_visit (job_id, from_date, to_date, note, version)
                        values (?, ?, ?, ?, nextval('next_visit_version'))
                        on conflict (job_id) do update set from_date = excluded.from_date, to_date = excluded.to_date,
                            note = excluded.note, version = excluded.version""").params(job, from, to, note).update();
    }

    /** @throws Stale where another visit is announced than the page showed */
    public void noVisit(UUID job, @Nullable Integer version, UUID by) {
        turn.of(job);
        trail.by(by);
        ClientPage.Visit kept = pages.visit(job);
        if (kept != null) {
            unlessChanged(kept, version, "", "", "");
            jdbc.sql("delete from next_visit where job_id = ?").param(job).update();
        }
    }

    private static void unlessChanged(
            ClientPage.@Nullable Visit kept, @Nullable Integer version, String from, String to, String note) {
        if (!Objects.equals(version, kept == null ? null : kept.version())) {
            throw new Stale(
                    "visit",
                    List.of(
                            new Stale.Row(
                                    "From", kept == null ? "" : kept.fromDate().toString(), from),
                            new Stale.Row(
                                    "To", kept == null ? "" : kept.toDate().toString(), to),
                            new Stale.Row("Note", kept == null ? "" : kept.note(), note)));
        }
    }

    private static String yesNo(boolean shown) {
        return shown ? "yes" : "no";
    }
}
