package org.tallywright.daylog.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.tallywright.daylog.Conflict;
import org.tallywright.daylog.DayLog;
import org.tallywright.daylog.DayOutcome;
import org.tallywright.daylog.DayReads;
import org.tallywright.daylog.Entry;
import org.tallywright.daylog.EntryTrail;
import org.tallywright.daylog.LateDays;
import org.tallywright.daylog.Place;
import org.tallywright.daylog.Said;
import org.tallywright.daylog.Target;
import org.tallywright.daylog.WeekDesk;
import org.tallywright.daylog.WeekState;
import org.tallywright.people.People;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.SignedIn;

/** Puts the page of an entry together, alive or taken off. */
@Component
class EntryPages {
    private final DayReads reads;
    private final WeekDesk weeks;
    private final EntryTrail trail;
    private final DayChoices choices;
    private final People people;
    private final ShopClock clock;

    EntryPages(DayReads reads, WeekDesk weeks, EntryTrail trail, DayChoices choices, People people, ShopClock clock) {
        this.reads = reads;
        this.weeks = weeks;
        this.trail = trail;
        this.choices = choices;
        this.people = people;
        this.clock = clock;
    }

    /** @throws NotHere for an id that never was, and for one that is not this person's to see */
    Entry entry(UUID id, SignedIn me) {
        Entry entry = reads.entry(id).orElseThrow(() -> new NotHere("time entry"));
        if (!DayLog.mayLog(me, entry.personId())) {
            throw new NotHere("time entry");
        }
        return entry;
    }

    EntryPage fresh(UUID id, SignedIn me) {
        if (reads.entry(id).isEmpty()) {
            return gone(id, me, null, "");
        }
        Entry entry = entry(id, me);
        return page(entry, me, RowForm.of(entry).toChoose(), entry.date().toString(), null, List.of());
    }

    EntryPage again(Entry entry, SignedIn me, RowForm form, String date, DayOutcome.Held held, List<String> yes) {
        return page(entry, me, form, date, held, yes);
    }

    private EntryPage page(
            Entry entry, SignedIn me, RowForm form, String date, DayOutcome.@Nullable Held held, List<String> yes) {
        Map<String, String> errors = new LinkedHashMap<>();
        List<DayPage.Ask> asks = new ArrayList<>();
        Conflict conflict = null;
        if (held != null) {
            held.objections().forEach(o -> errors.merge(o.field(), o.sentence(), (one, other) -> one + " " + other));
            held.questions().forEach(q -> asks.add(new DayPage.Ask(q.key(), q.sentence(), null)));
            conflict = held.conflicts().stream().findFirst().orElse(null);
        }
        Entry now = conflict == null ? null : conflict.now();
        WeekState week = weeks.of(entry.personId(), entry.date()).state();
        List<DayPage.Choices> all = new ArrayList<>();
        all.add(new DayPage.Choices("Chosen", List.of(DayChoices.inFull(entry.place()))));
        all.addAll(choices.of(true));
        return new EntryPage(
                entry.id(),
                entry.content().hours() + " on " + entry.place().inWords(),
                entry.personName(),
                other(entry.personId(), me),
                DayWords.day(entry.date()),
                DayWords.href(entry.date(), entry.personId(), me.personId()),
                entry.place().number().isEmpty()
                        ? null
                        : "/jobs/" + entry.place().number() + "/hours",
                week.fixed() ? null : now == null ? form : form.withVersion(now.version()),
                week.fixed() ? week.refusal() : null,
                date,
                (entry.correction() ? "Correction by " : "Logged by ") + entry.loggedByName() + ", "
                        + DayWords.moment(entry.loggedAt(), clock.zone()),
                LateDays.fromMemory(entry),
                conflict == null ? null : DayWords.now(now),
                now == null ? List.of() : Said.beside(Said.of(now), said(form, date)),
                null,
                errors,
                asks,
                all,
                acts(entry.id()));
    }

    /** Whether it was an entry that this person may see, and is off its day now. */
    boolean takenOff(UUID id, SignedIn me) {
        return reads.entry(id).isEmpty()
                && trail.gone(id).filter(g -> DayLog.mayLog(me, g.person())).isPresent();
    }

    /** A save that came too late: what was typed is shown, and can be logged as a new entry. */
    EntryPage tooLate(UUID id, SignedIn me, RowForm form, String date) {
        return gone(id, me, form, date);
    }

    private Said said(RowForm form, String date) {
        Target target = DayPages.target(form.what());
        Place place = target == null ? null : reads.places(Set.of(target)).get(target);
        String hourClass = Stream.of(HourClass.values())
                .filter(known -> known.code().equals(form.hourClass()))
                .map(known -> known.label().toLowerCase(Locale.ROOT))
                .findFirst()
                .orElse("");
        return new Said(date, place == null ? "" : place.inWords(), form.time(), hourClass, form.note(), form.reason());
    }

    private EntryPage gone(UUID id, SignedIn me, @Nullable RowForm typed, String typedDate) {
        EntryTrail.Gone gone =
                trail.gone(id).filter(g -> DayLog.mayLog(me, g.person())).orElseThrow(() -> new NotHere("time entry"));
        LocalDate date = gone.date();
        return new EntryPage(
                id,
                "Taken off " + DayWords.day(date),
                people.named(gone.person()).name(),
                other(gone.person(), me),
                DayWords.day(date),
                DayWords.href(date, gone.person(), me.personId()),
                null,
                null,
                null,
                date.toString(),
                "",
                false,
                null,
                typed == null ? List.of() : Said.beside(null, said(typed, typedDate)),
                typed == null ? null : typed.anew().withVersion(null),
                Map.of(),
                List.of(),
                List.of(),
                acts(id));
    }

    private static EntryPage.Difference difference(EntryTrail.Difference d) {
        boolean day = d.label().equals(EntryTrail.DAY);
        return new EntryPage.Difference(
                d.label(), day ? day(d.before()) : d.before(), day ? day(d.after()) : d.after());
    }

    private static String day(String date) {
        return date.isEmpty() ? "" : DayWords.day(LocalDate.parse(date));
    }

    private static @Nullable UUID other(UUID person, SignedIn me) {
        return person.equals(me.personId()) ? null : person;
    }

    private List<EntryPage.Act> acts(UUID id) {
        return trail.of(id).stream()
                .map(act -> new EntryPage.Act(
                        DayWords.moment(act.at(), clock.zone()),
                        act.who() == null ? "The shop's server" : act.who(),
                        switch (act.what()) {
                            case "insert" -> "logged it";
                            case "update" -> "changed it";
                            default -> "took it off the day";
                        },
                        act.differences().stream().map(EntryPages::difference).toList()))
                .toList();
    }
}
