package org.tallywright.daylog.web;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.tallywright.daylog.DayLog;
import org.tallywright.daylog.Week;
import org.tallywright.daylog.WeekDesk;
import org.tallywright.daylog.WeekReads;
import org.tallywright.daylog.WeekReads.Worker;
import org.tallywright.daylog.WeekState;
import org.tallywright.shared.Hours;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.OvertimeRule;
import org.tallywright.shared.ShopClock;
import org.tallywright.shop.ShopSettings;
import org.tallywright.web.Access;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Hours by week and the days that were forgotten. */
@Controller
@Access({Role.OWNER, Role.LEAD, Role.HELPER, Role.BOOKKEEPER})
class WeekController {
    private static final int WEEKS = 5;

    private final WeekReads reads;
    private final WeekDesk weeks;
    private final ShopSettings shop;
    private final ShopClock clock;

    WeekController(WeekReads reads, WeekDesk weeks, ShopSettings shop, ShopClock clock) {
        this.reads = reads;
        this.weeks = weeks;
        this.shop = shop;
        this.clock = clock;
    }

    @GetMapping("/hours")
    String index(@RequestParam @Nullable UUID person, @RequestParam @Nullable String week, SignedIn me, Model model) {
        UUID whose = me.is(Role.HELPER) && person == null ? me.personId() : person;
        if (me.is(Role.HELPER) && !me.personId().equals(whose)) {
            throw new NotHere("person");
        }
        LocalDate today = clock.today();
        LocalDate asked = week == null || week.isEmpty() ? today : DayController.date(week);
        LocalDate monday =
                (asked.isAfter(today) ? today : asked).with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        model.addAttribute("page", page(me, whose, monday, today));
        return "daylog/hours";
    }

    private WeekPage page(SignedIn me, @Nullable UUID person, LocalDate monday, LocalDate today) {
        LocalDate from = person == null ? monday : monday.minusWeeks(WEEKS - 1L);
        List<Worker> workers = reads.between(from, monday.plusDays(6), person);
        if (person != null && workers.isEmpty()) {
            throw new NotHere("person");
        }
        Map<UUID, Map<LocalDate, WeekState>> states = weeks.touched(from, monday).stream()
                .collect(Collectors.groupingBy(Week::person, Collectors.toMap(Week::monday, Week::state)));
        OvertimeRule rule = shop.current().overtime();
        List<WeekPage.Line> lines = new ArrayList<>();
        List<WeekPage.Gap> gaps = new ArrayList<>();
        for (LocalDate start = monday; !start.isBefore(from); start = start.minusWeeks(1)) {
            for (Worker worker : workers) {
                Map<LocalDate, WeekState> ofWorker = states.getOrDefault(worker.id(), Map.of());
                lines.add(line(me, worker, start, person == null, today, rule, ofWorker, gaps));
            }
        }
        int total = workers.stream()
                .flatMap(w -> w.minutes().values().stream())
                .mapToInt(Integer::intValue)
                .sum();
        String who = person == null ? "" : "person=" + person + "&";
        boolean latest = monday.plusWeeks(1).isAfter(today);
        return new WeekPage(
                person == null
                        ? "Hours, week of " + DayWords.shortDay(monday)
                        : "Hours of " + workers.get(0).name(),
                person,
                headings(monday, person == null),
                lines,
                Hours.ofMinutes(total),
                me.is(Role.OWNER, Role.BOOKKEEPER) && !rule.inWords().isEmpty(),
                rule.day() == null && rule.week() != null ? "Over " + rule.week() : "Overtime",
                gaps,
                "/hours?" + who + "week=" + monday.minusWeeks(1),
                latest ? null : "/hours?" + who + "week=" + monday.plusWeeks(1),
                person == null || me.is(Role.HELPER) ? null : "/hours?week=" + monday);
    }

    private static List<String> headings(LocalDate monday, boolean dated) {
        return IntStream.range(0, 7)
                .mapToObj(n -> DayWords.shortDay(monday.plusDays(n)))
                .map(day -> dated ? day : day.substring(0, 3))
                .toList();
    }

    private static WeekPage.Line line(
            SignedIn me,
            Worker worker,
            LocalDate start,
            boolean named,
            LocalDate today,
            OvertimeRule rule,
            Map<LocalDate, WeekState> states,
            List<WeekPage.Gap> gaps) {
        List<WeekPage.Cell> cells = new ArrayList<>();
        WeekState state = states.getOrDefault(start, WeekState.OPEN);
        List<Hours> days = new ArrayList<>();
        int sum = 0;
        for (int n = 0; n < 7; n++) {
            LocalDate date = start.plusDays(n);
            int minutes = worker.minutes().getOrDefault(date, 0);
            sum += minutes;
            days.add(Hours.ofMinutes(minutes));
            boolean mayRead = DayLog.mayLog(me, worker.id());
            String href = mayRead && !date.isAfter(today) ? DayWords.href(date, worker.id(), me.personId()) : null;
            boolean gap = !state.fixed() && worker.gap(date, today);
            cells.add(cell(worker, date, minutes, gap, href, mayRead));
            if (gap) {
                gaps.add(new WeekPage.Gap(
                        DayWords.shortDay(date) + (named ? ", " + worker.name() : ""),
                        href,
                        "/days/" + date + "/mark",
                        date.toString(),
                        worker.id()));
            }
        }
        Hours hours = Hours.ofMinutes(sum);
        Hours over = rule.split(days).overtime();
        return new WeekPage.Line(
                named ? worker.name() : DayWords.shortDay(start) + " to " + DayWords.shortDay(start.plusDays(6)),
                "/weeks/" + start + (worker.id().equals(me.personId()) ? "" : "?person=" + worker.id()),
                cells,
                hours,
                over.isZero() ? "" : over.toString(),
                state == WeekState.OPEN ? "" : state.label());
    }

    private static WeekPage.Cell cell(
            Worker worker, LocalDate date, int minutes, boolean gap, @Nullable String href, boolean mayRead) {
        WeekReads.Mark kept = worker.marks().get(date);
        String mark = kept == null ? null : kept.kind();
        // The bookkeeper reads hours, not notes; so a note shows only to those who may open the day.
        String note = kept == null || !mayRead ? "" : kept.note();
        if (minutes > 0) {
            String words = Hours.ofMinutes(minutes).toString();
            return new WeekPage.Cell(mark == null ? words : words + ", " + mark, note, "", href);
        }
        if (mark != null) {
            return new WeekPage.Cell(mark, note, "mark", href);
        }
        return new WeekPage.Cell(gap ? "no hours" : "", "", gap ? "gap" : "", href);
    }
}
