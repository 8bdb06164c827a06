package org.tallywright.daylog.web;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.tallywright.daylog.Corrections;
import org.tallywright.daylog.DayLog;
import org.tallywright.daylog.DayReads;
import org.tallywright.daylog.Place;
import org.tallywright.daylog.Target;
import org.tallywright.daylog.Week;
import org.tallywright.daylog.WeekDesk;
import org.tallywright.daylog.WeekReads;
import org.tallywright.daylog.WeekState;
import org.tallywright.people.People;
import org.tallywright.people.PersonName;
import org.tallywright.people.Wages;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Money;
import org.tallywright.shared.MoneyFormat;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Overtime;
import org.tallywright.shared.OvertimeRule;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shop.ShopSettings;
import org.tallywright.web.SignedIn;

/** Puts a person's week together. */
@Component
class WeekSheets {
    private final WeekReads reads;
    private final WeekDesk weeks;
    private final Corrections corrections;
    private final DayReads days;
    private final DayChoices choices;
    private final People people;
    private final Wages wages;
    private final ShopSettings shop;
    private final ShopConventions conventions;
    private final ShopClock clock;

    WeekSheets(
            WeekReads reads,
            WeekDesk weeks,
            Corrections corrections,
            DayReads days,
            DayChoices choices,
            People people,
            Wages wages,
            ShopSettings shop,
            ShopConventions conventions,
            ShopClock clock) {
        this.reads = reads;
        this.weeks = weeks;
        this.corrections = corrections;
        this.days = days;
        this.choices = choices;
        this.people = people;
        this.wages = wages;
        this.shop = shop;
        this.conventions = conventions;
        this.clock = clock;
    }

    /** @param typed a correction that was refused, or null */
    WeekSheet of(SignedIn me, UUID person, LocalDate monday, @Nullable CorrectionForm typed) {
        PersonName who = people.named(person);
        WeekReads.Worker worker = reads.between(monday, monday.plusDays(6), person).stream()
                .findFirst()
                .orElseThrow(() -> new NotHere("week"));
        Week week = weeks.of(person, monday);
        boolean mayOpen = DayLog.mayLog(me, person);
        List<Hours> dayHours = IntStream.range(0, 7)
                .mapToObj(n -> Hours.ofMinutes(worker.minutes().getOrDefault(monday.plusDays(n), 0)))
                .toList();
        OvertimeRule rule = shop.current().overtime();
        Overtime split = rule.split(dayHours);
        boolean correct = week.state() == WeekState.LOCKED && Corrections.may(me);
        return new WeekSheet(
                monday,
                "Week of " + DayWords.shortDay(monday) + " to " + DayWords.shortDay(monday.plusDays(6)),
                new WeekSheet.Whose(who.name(), person.equals(me.personId()) ? null : person),
                IntStream.range(0, 7)
                        .mapToObj(n -> DayWords.headDay(monday.plusDays(n)))
                        .toList(),
                lines(reads.worked(person, monday), monday, mayOpen),
                totals(me, worker, monday, mayOpen),
                Hours.sum(dayHours),
                split.overtime().isZero() ? "" : split.overtime().toString(),
                rule.inWords(),
                me.seesWages() ? pay(person, monday, worker, rule, split.overtime()) : null,
                week.state().fixed() ? List.of() : gaps(me, worker, monday),
                state(week),
                weeks.next(week, me, who.role()).stream()
                        .map(to -> move(to, person.equals(me.personId())))
                        .toList(),
                made(person, monday, mayOpen),
                correct ? typed == null ? CorrectionForm.blank(monday) : typed : null,
                correct ? choices(person, monday) : List.of(),
                links(person, monday, me));
    }

    private List<WeekSheet.Line> lines(List<WeekReads.Worked> worked, LocalDate monday, boolean mayOpen) {
        Map<String, List<WeekReads.Worked>> byWhat = new LinkedHashMap<>();
        worked.forEach(one -> byWhat.computeIfAbsent(one.number() + " " + one.what(), k -> new ArrayList<>())
                .add(one));
        return byWhat.values().stream().map(all -> line(all, monday, mayOpen)).toList();
    }

    private static WeekSheet.Line line(List<WeekReads.Worked> all, LocalDate monday, boolean mayOpen) {
        WeekReads.Worked first = all.get(0);
        String[] cells = new String[7];
        Arrays.fill(cells, "");
        int sum = 0;
        for (WeekReads.Worked one : all) {
            cells[(int) (one.date().toEpochDay() - monday.toEpochDay())] =
                    Hours.ofMinutes(one.minutes()).toString();
            sum += one.minutes();
        }
        String number = first.number();
        return new WeekSheet.Line(
                number == null ? "The shop" : first.what(),
                number == null ? first.what() : number,
                number == null || !mayOpen ? null : "/jobs/" + number + "/hours",
                List.of(cells),
                Hours.ofMinutes(sum));
    }

    private List<WeekSheet.Total> totals(SignedIn me, WeekReads.Worker worker, LocalDate monday, boolean mayOpen) {
        return IntStream.range(0, 7)
                .mapToObj(monday::plusDays)
                .map(date -> {
                    int minutes = worker.minutes().getOrDefault(date, 0);
                    WeekReads.Mark mark = worker.marks().get(date);
                    String hours = minutes == 0 ? "" : Hours.ofMinutes(minutes).toString();
                    String text = mark == null ? hours : hours.isEmpty() ? mark.kind() : hours + ", " + mark.kind();
                    boolean open = mayOpen && !date.isAfter(clock.today()) && !text.isEmpty();
                    return new WeekSheet.Total(text, open ? DayWords.href(date, worker.id(), me.personId()) : null);
                })
                .toList();
    }

    private WeekSheet.@Nullable Pay pay(
            UUID person, LocalDate monday, WeekReads.Worker worker, OvertimeRule rule, Hours overtime) {
        Map<LocalDate, BigDecimal> paid = wages.on(person, monday, monday.plusDays(6));
        List<Overtime.Stretch> stretches = new ArrayList<>();
        for (Map.Entry<LocalDate, Integer> day : worker.minutes().entrySet()) {
            BigDecimal wage = paid.get(day.getKey());
            if (wage == null) {
                return null;
            }
            stretches.add(new Overtime.Stretch(Hours.ofMinutes(day.getValue()), wage));
        }
        Money straight = Overtime.straightPay(stretches);
        Money premium = rule.premium(stretches, overtime);
        MoneyFormat money = conventions.money();
        return stretches.isEmpty()
                ? null
                : new WeekSheet.Pay(
                        money.format(straight), money.format(premium), money.format(straight.plus(premium)));
    }

    private List<WeekPage.Gap> gaps(SignedIn me, WeekReads.Worker worker, LocalDate monday) {
        return IntStream.range(0, 7)
                .mapToObj(monday::plusDays)
                .filter(date -> worker.gap(date, clock.today()))
                .map(date -> new WeekPage.Gap(
                        DayWords.shortDay(date),
                        DayLog.mayLog(me, worker.id()) ? DayWords.href(date, worker.id(), me.personId()) : null,
                        "/days/" + date + "/mark",
                        date.toString(),
                        worker.id()))
                .toList();
    }

    private WeekSheet.State state(Week week) {
        List<String> acts = new ArrayList<>();
        act(acts, "Handed in by ", week.submitted());
        act(acts, "Approved by ", week.approved());
        act(acts, "Locked by ", week.locked());
        Integer then = week.minutes();
        return new WeekSheet.State(
                week.state().code(),
                week.state().label(),
                acts,
                then == null ? "" : Hours.ofMinutes(then).toString(),
                week.note(),
                week.version());
    }

    private void act(List<String> acts, String words, Week.@Nullable Act act) {
        if (act != null) {
            acts.add(words + act.who() + ", " + DayWords.moment(act.at(), clock.zone()));
        }
    }

    private static WeekSheet.Move move(WeekState to, boolean own) {
        String label = switch (to) {
            case SUBMITTED -> "Hand in the week";
            case APPROVED -> "Approve the week";
            case LOCKED -> "Lock the week";
            case OPEN -> own ? "Take it back" : "Send it back";
        };
        return new WeekSheet.Move(to.code(), label, to == WeekState.OPEN && !own);
    }

    private List<WeekSheet.Corrected> made(UUID person, LocalDate monday, boolean reasons) {
        return corrections.between(person, monday, monday.plusDays(6)).stream()
                .map(one -> new WeekSheet.Corrected(
                        one.id().toString(),
                        DayWords.shortDay(one.date()),
                        one.went() + ", " + one.hourClass().label().toLowerCase(Locale.ROOT),
                        (one.minutes() > 0 ? "+" : "") + Hours.ofMinutes(one.minutes()),
                        reasons ? one.reason() : "",
                        one.by() + ", " + DayWords.moment(one.at(), clock.zone()),
                        one.minutes() < 0))
                .toList();
    }

    /** What stands in the week first, then everything else. */
    private List<DayPage.Choices> choices(UUID person, LocalDate monday) {
        Set<Target> there = reads.targets(person, monday);
        List<DayPage.Choices> all = new ArrayList<>();
        if (!there.isEmpty()) {
            all.add(new DayPage.Choices(
                    "In this week",
                    days.places(there).values().stream()
                            .sorted(Comparator.comparing(Place::inWords))
                            .map(DayChoices::inFull)
                            .toList()));
        }
        all.addAll(choices.of(true));
        return all;
    }

    private WeekSheet.Links links(UUID person, LocalDate monday, SignedIn me) {
        boolean latest = monday.plusWeeks(1).isAfter(clock.today());
        return new WeekSheet.Links(
                href(monday.minusWeeks(1), person, me),
                latest ? null : href(monday.plusWeeks(1), person, me),
                "/hours?week=" + monday,
                "/weeks/" + monday);
    }

    static String href(LocalDate monday, UUID person, SignedIn me) {
        return "/weeks/" + monday + (person.equals(me.personId()) ? "" : "?person=" + person);
    }
}
