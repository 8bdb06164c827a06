package org.tallywright.daylog.web;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.tallywright.daylog.ClockDesk;
import org.tallywright.daylog.ClockOffer;
import org.tallywright.daylog.ClockRule;
import org.tallywright.daylog.ClockRun;
import org.tallywright.daylog.Week;
import org.tallywright.daylog.WeekState;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Ids;
import org.tallywright.shared.ShopClock;

/** Puts the clock of a day sheet together, from one query. */
@Component
class ClockFaces {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);

    private final ClockDesk desk;
    private final ShopClock clock;

    ClockFaces(ClockDesk desk, ShopClock clock) {
        this.desk = desk;
        this.clock = clock;
    }

    /** A person's open runs; of another person nothing is read. */
    List<ClockRun> open(DayPages.Sheet sheet) {
        return sheet.person().equals(sheet.me().personId()) ? desk.open(sheet.person()) : List.of();
    }

    ClockFace of(DayPages.Sheet sheet, WeekState week, DayForm form, List<ClockRun> open) {
        LocalDate today = clock.today();
        boolean own = sheet.person().equals(sheet.me().personId());
        boolean here = sheet.date().equals(today);
        ClockRun running = open.stream()
                .filter(run -> run.runs() && !ClockRule.forgotten(run, clock))
                .findFirst()
                .orElse(null);
        Map<LocalDate, List<ClockOffer>> offers = ClockOffer.of(open);
        Map<String, ClockFace.Offer> beside = new HashMap<>();
        List<ClockFace.Offer> others = new ArrayList<>();
        for (ClockOffer offer : offers.getOrDefault(sheet.date(), List.of())) {
            String box = box(form.rows(), offer.first(), form.clock());
            ClockFace.Offer shown = offer(offer, week, box, form);
            if (box == null) {
                others.add(shown);
            } else {
                beside.put(box, shown);
            }
        }
        return new ClockFace(
                own,
                own && here && !week.fixed(),
                Ids.next(),
                open.stream()
                        .filter(ClockRun::runs)
                        .map(ClockRun::id)
                        .findFirst()
                        .orElse(null),
                form.clock().problem(),
                here && running != null ? running(running) : null,
                own ? asks(open, sheet.date(), form.clock()) : List.of(),
                beside,
                others,
                own && here ? days(offers, today) : List.of(),
                form.clock().takes().stream().map(ClockForm::code).toList(),
                running == null ? "" : key(running));
    }

    private static String key(ClockRun run) {
        return run.target().code() + " " + run.hourClass().code();
    }

    /** The first row on the same thing, an empty one before a saved one. */
    private static @Nullable String box(List<RowForm> rows, ClockRun run, ClockForm form) {
        String best = null;
        for (int n = 0; n < rows.size(); n++) {
            RowForm row = rows.get(n);
            boolean same = key(run).equals(row.what() + " " + row.hourClass());
            boolean taking = form.takes().stream().anyMatch(take -> take.entry().equals(row.id()));
            if (same && !taking && row.untouched()) {
                return "row." + n;
            }
            if (same && best == null) {
                best = "row." + n;
            }
        }
        return best;
    }

    /** Where it goes into an empty row, that row's id is the entry's; else the entry is one more on the same thing. */
    private static ClockFace.Offer offer(ClockOffer offer, WeekState week, @Nullable String box, DayForm form) {
        RowForm row = box == null ? null : form.rows().get(Integer.parseInt(box.substring(4)));
        UUID entry = row != null && row.untouched() ? row.id() : Ids.next();
        ClockDesk.Take take = new ClockDesk.Take(entry, offer.first().id(), offer.minutes());
        return new ClockFace.Offer(
                offer.first().place().inWords(),
                Hours.ofMinutes(offer.minutes()).toString(),
                week.fixed() ? null : "clock-take:" + ClockForm.code(take),
                offer.first().id());
    }

    private ClockFace.Running running(ClockRun run) {
        Duration soFar = Duration.between(run.startedAt(), clock.now());
        return new ClockFace.Running(
                run.id(),
                run.place().inWords(),
                TIME.format(run.startedAt().atZone(clock.zone())),
                Hours.ofMinutes((int) soFar.toMinutes()).toString(),
                soFar.toSeconds());
    }

    /** A forgotten clock is asked about today and on the sheet of its day. */
    private List<ClockFace.Ask> asks(List<ClockRun> open, LocalDate date, ClockForm form) {
        return open.stream()
                .filter(run -> run.runs() ? ClockRule.forgotten(run, clock) : !run.endKnown())
                .filter(run -> date.equals(clock.today()) || run.date().equals(date))
                .map(run -> new ClockFace.Ask(
                        run.id(),
                        sentence(run),
                        run.runs(),
                        run.runs() && !ClockRule.pastItsDay(run, clock),
                        form.ended().getOrDefault(run.id(), "")))
                .toList();
    }

    private String sentence(ClockRun run) {
        String since = since(run.startedAt());
        Instant end = run.endedAt();
        return end == null
                ? "The clock for " + run.place().inWords() + " has run since " + since + ". When did you stop?"
                : "The clock for " + run.place().inWords() + " ran from " + since + " until " + since(end)
                        + ", longer than it is believed. When did you stop?";
    }

    private String since(Instant at) {
        String time = TIME.format(at.atZone(clock.zone()));
        LocalDate day = clock.dateOf(at);
        LocalDate today = clock.today();
        if (day.equals(today)) {
            return time;
        }
        return day.equals(today.minusDays(1)) ? time + " yesterday" : time + " on " + DayWords.shortDay(day);
    }

    /** This week's and those of the week before, as the days that were forgotten. */
    private static List<ClockFace.Day> days(Map<LocalDate, List<ClockOffer>> offers, LocalDate today) {
        LocalDate from = Week.mondayOf(today).minusWeeks(1);
        return offers.entrySet().stream()
                .filter(day -> day.getKey().isBefore(today) && !day.getKey().isBefore(from))
                .map(day -> new ClockFace.Day(
                        DayWords.shortDay(day.getKey()) + ": "
                                + Hours.ofMinutes(day.getValue().stream()
                                        .mapToInt(ClockOffer::minutes)
                                        .sum()),
                        "/days/" + day.getKey()))
                .toList();
    }
}
