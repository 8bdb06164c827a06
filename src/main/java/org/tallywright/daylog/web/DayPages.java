package org.tallywright.daylog.web;

import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.tallywright.daylog.ClockOffer;
import org.tallywright.daylog.ClockRun;
import org.tallywright.daylog.Conflict;
import org.tallywright.daylog.DayOutcome;
import org.tallywright.daylog.DayReads;
import org.tallywright.daylog.Entry;
import org.tallywright.daylog.LateDays;
import org.tallywright.daylog.LikelyTask;
import org.tallywright.daylog.Objection;
import org.tallywright.daylog.Place;
import org.tallywright.daylog.Question;
import org.tallywright.daylog.Target;
import org.tallywright.daylog.Week;
import org.tallywright.people.People;
import org.tallywright.shared.Hours;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;
import org.tallywright.shop.ShopSettings;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Puts the day sheet together: few queries, none of them for each row. */
@Component
class DayPages {
    private static final int PHOTO_JOBS = 4;

    private final DayReads reads;
    private final DayChoices choices;
    private final ClockFaces clocks;
    private final People people;
    private final ShopSettings shop;
    private final ShopClock clock;

    DayPages(DayReads reads, DayChoices choices, ClockFaces clocks, People people, ShopSettings shop, ShopClock clock) {
        this.reads = reads;
        this.choices = choices;
        this.clocks = clocks;
        this.people = people;
        this.shop = shop;
        this.clock = clock;
    }

    /** Whose day, which day, who looks. */
    record Sheet(SignedIn me, UUID person, String name, LocalDate date) {}

    /** What a page that came back adds to the rows. */
    record Back(
            List<Objection> objections,
            List<Question> questions,
            List<Conflict> conflicts,
            Map<UUID, LineReader.Heard> heard,
            @Nullable String lineProblem,
            boolean allChoices) {
        static Back asking(List<Question> open) {
            return new Back(List.of(), open, List.of(), Map.of(), null, false);
        }

        static Back of(DayOutcome.Held held) {
            return new Back(held.objections(), held.questions(), held.conflicts(), Map.of(), null, false);
        }
    }

    /** The page as it is opened. */
    DayPage fresh(Sheet sheet) {
        return fresh(sheet, null, List.of());
    }

    /**
     * The page as it is now, after something beside the rows was refused.
     *
     * @param marking what was typed for the mark, or null
     * @param versions what is kept and what was wanted
     */
    DayPage fresh(Sheet sheet, DayPage.@Nullable Marking marking, List<Stale.Row> versions) {
        DayReads.Facts facts = reads.facts(sheet.person(), sheet.date());
        List<Entry> entries = reads.entries(sheet.person(), sheet.date());
        List<LikelyTask> likely = reads.likely(sheet.person(), sheet.date());
        List<ClockRun> open = clocks.open(sheet);
        List<RowForm> rows = new ArrayList<>();
        entries.forEach(entry -> rows.add(RowForm.of(entry)));
        if (!sheet.date().isAfter(clock.today()) && !facts.week().fixed()) {
            Set<Target> there = entries.stream().map(e -> e.content().target()).collect(Collectors.toSet());
            for (ClockOffer offer : ClockOffer.of(open).getOrDefault(sheet.date(), List.of())) {
                if (there.add(offer.first().target())) {
                    rows.add(RowForm.blank(offer.first().place())
                            .withClass(offer.first().hourClass().code()));
                }
            }
            likely.stream()
                    .map(LikelyTask::place)
                    .filter(place -> !there.contains(place.target()))
                    .forEach(place -> rows.add(RowForm.blank(place)));
            rows.add(RowForm.toPick());
        }
        DayForm form = new DayForm(rows, "", Set.of(), "", ClockForm.NONE);
        List<Question> asked = reads.open(sheet.person(), sheet.date(), clock.today(), entries, facts.answers());
        return page(sheet, form, facts, entries, likely, open, Back.asking(asked), marking, versions);
    }

    /** The page as it came back, with everything typed in it. */
    DayPage again(Sheet sheet, DayForm form, Back back) {
        return page(
                sheet,
                form,
                reads.facts(sheet.person(), sheet.date()),
                reads.entries(sheet.person(), sheet.date()),
                reads.likely(sheet.person(), sheet.date()),
                clocks.open(sheet),
                back,
                null,
                List.of());
    }

    private DayPage page(
            Sheet sheet,
            DayForm form,
            DayReads.Facts facts,
            List<Entry> entries,
            List<LikelyTask> likely,
            List<ClockRun> open,
            Back back,
            DayPage.@Nullable Marking marking,
            List<Stale.Row> versions) {
        LocalDate today = clock.today();
        DayRows rows = new DayRows(form, back, known(form, entries, likely, open), entries, likely, sheet.date());
        boolean future = sheet.date().isAfter(today);
        List<DayPage.Row> spare = facts.week().fixed()
                        && !future
                        && sheet.person().equals(sheet.me().personId())
                ? spare(entries, likely, sheet.date())
                : List.of();
        return new DayPage(
                sheet.date(),
                (sheet.date().equals(today) ? "Today, " : "") + DayWords.day(sheet.date()),
                sheet.date().equals(today),
                future,
                whose(sheet),
                links(sheet, today),
                DayWords.href(sheet.date(), sheet.person(), sheet.me().personId()),
                rows.all(),
                form.line(),
                rows.errors(),
                dayAsks(sheet, back, facts, today),
                rows.total(),
                Hours.ofMinutes(shop.current().dayMinutes()),
                sheet.date().equals(today) ? curing() : List.of(),
                facts.mark(),
                marking != null
                        ? marking
                        : new DayPage.Marking(
                                facts.mark() == null ? "" : facts.mark().note(), null),
                versions,
                future || facts.week().fixed() && spare.isEmpty() ? List.of() : choices.of(back.allChoices()),
                inWeek(sheet, facts, today),
                spare,
                clock.zone().getId(),
                form.yes(),
                back.allChoices(),
                photos(sheet, entries, likely, today),
                material(sheet, entries, future),
                clocks.of(sheet, facts.week(), form, open));
    }

    private static List<DayPage.Link> photos(
            Sheet sheet, List<Entry> entries, List<LikelyTask> likely, LocalDate today) {
        if (!sheet.date().equals(today) || !sheet.person().equals(sheet.me().personId())) {
            return List.of();
        }
        return Stream.concat(entries.stream().map(Entry::place), likely.stream().map(LikelyTask::place))
                .filter(place -> !place.number().isEmpty() && !place.closed())
                .map(place -> new DayPage.Link(
                        place.number() + " " + place.jobTitle(), "/jobs/" + place.number() + "/photos", false))
                .distinct()
                .limit(PHOTO_JOBS)
                .toList();
    }

    /** With the jobs of the day's hours, so that one alone is chosen already; for one's own days. */
    private static String material(Sheet sheet, List<Entry> entries, boolean future) {
        if (future || !sheet.person().equals(sheet.me().personId())) {
            return "";
        }
        return entries.stream()
                .map(Entry::place)
                .filter(place -> !place.number().isEmpty() && !place.closed())
                .map(place -> "&job=" + place.number())
                .distinct()
                .collect(Collectors.joining("", "/materials/used?on=" + sheet.date(), ""));
    }

    private static List<DayPage.Row> spare(List<Entry> entries, List<LikelyTask> likely, LocalDate date) {
        Map<Target, Place> places = new LinkedHashMap<>();
        entries.forEach(entry -> places.put(entry.content().target(), entry.place()));
        likely.forEach(task -> places.put(task.place().target(), task.place()));
        List<RowForm> rows = new ArrayList<>();
        places.values().forEach(place -> rows.add(RowForm.blank(place)));
        rows.add(RowForm.toPick());
        DayForm form = new DayForm(rows, "", Set.of(), "", ClockForm.NONE);
        return new DayRows(form, Back.asking(List.of()), places, List.of(), likely, date).all();
    }

    /** Only today's own sheet reminds of days that were forgotten: this week's and the week before. */
    private DayPage.InWeek inWeek(Sheet sheet, DayReads.Facts facts, LocalDate today) {
        LocalDate date = sheet.date();
        boolean remind = date.equals(today) && sheet.person().equals(sheet.me().personId());
        List<LocalDate> missing = remind
                ? reads.missing(sheet.person(), Week.mondayOf(date).minusWeeks(1), date.minusDays(1))
                : List.of();
        return new DayPage.InWeek(
                facts.week().fixed() ? facts.week().refusal() : null,
                WeekSheets.href(Week.mondayOf(date), sheet.person(), sheet.me()),
                missing.stream()
                        .map(day -> new WeekPage.Gap(
                                DayWords.shortDay(day),
                                DayWords.href(day, sheet.person(), sheet.me().personId()),
                                "/days/" + day + "/mark",
                                day.toString(),
                                sheet.person()))
                        .toList());
    }

    private Map<Target, Place> known(DayForm form, List<Entry> entries, List<LikelyTask> likely, List<ClockRun> open) {
        Map<Target, Place> known = new HashMap<>();
        open.forEach(run -> known.put(run.target(), run.place()));
        entries.forEach(entry -> known.put(entry.content().target(), entry.place()));
        likely.forEach(task -> known.put(task.place().target(), task.place()));
        Set<Target> asked = new HashSet<>();
        form.rows().forEach(row -> {
            Target target = target(row.what());
            if (target != null && !known.containsKey(target)) {
                asked.add(target);
            }
        });
        if (!asked.isEmpty()) {
            known.putAll(reads.places(asked));
        }
        return known;
    }

    static @Nullable Target target(String what) {
        try {
            return Target.of(what);
        } catch (NotUnderstood e) {
            return null;
        }
    }

    private List<DayPage.Ask> dayAsks(Sheet sheet, Back back, DayReads.Facts facts, LocalDate today) {
        Stream<Question> asked = back.questions().stream().filter(q -> q.row() == null);
        boolean late = LateDays.late(sheet.date(), today) && !facts.answers().contains(LateDays.KEY);
        if (late && back.questions().stream().noneMatch(q -> q.key().equals(LateDays.KEY))) {
            asked = Stream.concat(asked, Stream.of(LateDays.QUESTION));
        }
        return asked.map(q -> ask(q)).toList();
    }

    static DayPage.Ask ask(Question question) {
        return new DayPage.Ask(question.key(), question.sentence(), question.offer());
    }

    private DayPage.Whose whose(Sheet sheet) {
        boolean own = sheet.person().equals(sheet.me().personId());
        List<DayPage.Link> crew = sheet.me().is(Role.OWNER, Role.LEAD)
                ? people.crew().stream()
                        .map(p -> new DayPage.Link(
                                p.name(),
                                DayWords.href(sheet.date(), p.id(), sheet.me().personId()),
                                p.id().equals(sheet.person())))
                        .toList()
                : List.of();
        return new DayPage.Whose(sheet.person(), sheet.name(), own, crew.size() > 1 || !own ? crew : List.of());
    }

    private static DayPage.Links links(Sheet sheet, LocalDate today) {
        UUID me = sheet.me().personId();
        LocalDate date = sheet.date();
        boolean own = sheet.person().equals(me);
        return new DayPage.Links(
                DayWords.href(date.minusDays(1), sheet.person(), me),
                date.isBefore(today) ? DayWords.href(date.plusDays(1), sheet.person(), me) : null,
                own ? "/" : DayWords.href(today, sheet.person(), me),
                WeekSheets.href(Week.mondayOf(date.isAfter(today) ? today : date), sheet.person(), sheet.me()));
    }

    private List<DayPage.Cure> curing() {
        ZonedDateTime now = clock.wallTime();
        return reads.curing(now.toInstant()).stream()
                .map(cure -> new DayPage.Cure(
                        cure.name(), cure.number() + " · " + cure.what(), "until " + DayWords.until(cure.until(), now)))
                .toList();
    }
}
