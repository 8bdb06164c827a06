package org.tallywright.daylog;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.tallywright.shared.ClockSpan;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;

/**
 * What is impossible about a day, and what is only unlikely. The impossible is refused; the unlikely is saved and asked
 * once beside it, and "it is right" is an answer that is kept. The limits are common practice, no source, except where said.
 */
final class DayChecks {
    static final int DAY = 24 * 60;
    private static final int LONG_DAY = 14 * 60;
    private static final int LONG_ENTRY = 9 * 60;
    private static final int LONG_WAIT = 4 * 60;
    private static final int LONG_STRETCH = 6 * 60;
    private static final int BREAK = 20;
    private static final String QUARTER = "quarter";
    private static final Pattern DECIMAL = Pattern.compile("\\d{0,4}[.,]\\d+ ?(?:h|hr|hrs|hours?)?\\.?");

    /**
     * One entry of the day as it would be.
     *
     * @param fresh whether this save makes or changes it; the others are only counted
     * @param onPage whether the page showed it
     */
    record Line(UUID id, Content content, Place place, String typed, boolean fresh, boolean onPage) {
        static Line of(TypedRow row, Place place, boolean fresh) {
            return new Line(row.id(), Objects.requireNonNull(row.content()), place, row.typed(), fresh, true);
        }

        static Line kept(Entry entry) {
            return new Line(entry.id(), entry.content(), entry.place(), "", false, true);
        }

        static Line elsewhere(Entry entry) {
            return new Line(entry.id(), entry.content(), entry.place(), "", false, false);
        }

        boolean sameKind(Line other) {
            return !id.equals(other.id)
                    && content.target().equals(other.content.target())
                    && content.hourClass() == other.content.hourClass();
        }
    }

    final List<Objection> objections = new ArrayList<>();
    final List<Question> questions = new ArrayList<>();

    private final LocalDate date;
    private final LocalDate today;
    private final List<Line> lines;
    private final List<Line> fresh;

    DayChecks(LocalDate date, LocalDate today, List<Line> lines, List<Entry> removed) {
        this.date = date;
        this.today = today;
        this.lines = lines;
        this.fresh = lines.stream().filter(Line::fresh).toList();
        removed.forEach(this::askAboutRemoval);
        if (!fresh.isEmpty()) {
            refuse();
        }
        if (!lines.isEmpty()) {
            ask();
        }
    }

    /** What is unlikely about a day as it is kept. */
    static List<Question> ofKept(LocalDate date, LocalDate today, List<Entry> entries) {
        List<Line> lines = entries.stream().map(Line::kept).toList();
        return new DayChecks(date, today, lines, List.of()).questions;
    }

    int minutes() {
        return lines.stream().mapToInt(line -> line.content().minutes()).sum();
    }

    /** The questions that hold a save and that neither it nor an earlier one answers. */
    List<Question> holding(Set<String> answers) {
        return questions.stream()
                .filter(q -> q.holds() && !answers.contains(q.key()))
                .toList();
    }

    /** Minutes that were typed as minutes are meant: nobody is asked about them. */
    Set<String> meant() {
        return fresh.stream()
                .filter(line -> tenths(line) && !decimal(line))
                .map(line -> key(QUARTER, line))
                .collect(Collectors.toSet());
    }

    private void refuse() {
        if (date.isAfter(today)) {
            objections.add(new Objection(null, "", "This day has not come yet. Hours can be logged up to today."));
        }
        if (minutes() > DAY) {
            objections.add(new Objection(
                    null, "", "The day comes to " + Hours.ofMinutes(minutes()) + ". A day has 24 hours."));
        }
        fresh.forEach(this::refuse);
        refuseOverlaps();
    }

    private void refuse(Line line) {
        HourClass hourClass = line.content().hourClass();
        if (line.content().minutes() > DAY || line.content().minutes() < 1) {
            objections.add(new Objection(line.id(), "time", "One entry holds up to 24 hours."));
        }
        if (line.place().closed() && hourClass != HourClass.CALL_BACK) {
            objections.add(new Objection(
                    line.id(),
                    "class",
                    line.place().number() + " is closed. Make it a call-back, or pick the job you worked on.",
                    new Question.Offer(
                            "Make it a call-back", "class:" + line.id() + ":" + HourClass.CALL_BACK.code())));
        }
        if (line.place().lost()) {
            objections.add(new Objection(
                    line.id(), "what", line.place().number() + " was lost. Its hours go to the shop's lost bids."));
        }
        if (hourClass == HourClass.REWORK && line.content().reason().isBlank()) {
            objections.add(new Objection(line.id(), "reason", "Say in a word why it had to be done again."));
        }
    }

    private void refuseOverlaps() {
        for (Line line : fresh) {
            ClockSpan span = line.content().span();
            for (Line other : lines) {
                ClockSpan otherSpan = other.content().span();
                if (span != null && otherSpan != null && !line.id().equals(other.id()) && span.overlaps(otherSpan)) {
                    objections.add(new Objection(
                            line.id(),
                            "time",
                            span + " overlaps " + otherSpan + " on "
                                    + other.place().inWords() + ". Which is right?",
                            new Question.Offer(
                                    "Keep " + line.content().hours() + " without the clock",
                                    "hours:" + line.id() + ":" + line.content().minutes())));
                }
            }
        }
    }

    private void ask() {
        if (LateDays.late(date, today)) {
            questions.add(LateDays.QUESTION);
        }
        if (minutes() > LONG_DAY) {
            questions.add(new Question(
                    "long day " + minutes(), null, "The day comes to " + Hours.ofMinutes(minutes()) + ". All of it?"));
        }
        askAboutBreak();
        askAboutTravel();
        lines.forEach(this::ask);
    }

    private void ask(Line line) {
        int minutes = line.content().minutes();
        Hours hours = line.content().hours();
        if (line.content().hourClass() == HourClass.STANDBY && minutes > LONG_WAIT) {
            askOn(
                    line,
                    "waiting",
                    hours + " of standing by. Glue and finish cure by themselves: that is a wait on the"
                            + " task, not hours. Did somebody stand there?");
        } else if (minutes > LONG_ENTRY) {
            askOn(line, "long entry", hours + " on one thing. All of it?");
        }
        LocalDate opened = line.place().openedOn();
        if (opened != null && date.isBefore(opened)) {
            askOn(
                    line,
                    "before the job",
                    line.place().number() + " was opened later, on " + opened + ". The right job?");
        }
        askAboutTwins(line);
        askAboutQuarter(line);
    }

    private void askOn(Line line, String what, String sentence) {
        questions.add(new Question(key(what, line), line.id(), sentence));
    }

    private static String key(String what, Line line) {
        return what + " " + line.id() + " " + line.content().minutes();
    }

    /** The same hours on the same thing, or more of them saved where this page does not show it. */
    private void askAboutTwins(Line line) {
        for (Line other : lines) {
            boolean ownTimes = line.content().span() != null && other.content().span() != null;
            boolean later = line.fresh() == other.fresh() ? lines.indexOf(other) > lines.indexOf(line) : other.fresh();
            if (!line.sameKind(other) || ownTimes || later) {
                continue;
            }
            if (other.content().minutes() == line.content().minutes()) {
                String sentence =
                        line.content().hours() + " on " + line.place().inWords() + " is on this day already. Twice?";
                Question.Offer offer = new Question.Offer("Take this one off", "off:" + line.id());
                boolean elsewhere = line.fresh() && !other.onPage();
                questions.add(new Question(key("twice", line), line.id(), sentence, offer, elsewhere));
                return;
            }
            if (!other.onPage() && line.fresh()) {
                questions.add(Question.holding(
                        key("more", line),
                        line.id(),
                        other.content().hours() + " on " + line.place().inWords()
                                + " was saved meanwhile, perhaps from another device. Add "
                                + line.content().hours() + " to it?"));
                return;
            }
        }
    }

    /**
     * A tenth of an hour is as often a slipped decimal point as it is six minutes. What was typed is not kept, so a kept
     * entry is judged by its minutes: tenths of an hour that are no five minutes either.
     */
    private void askAboutQuarter(Line line) {
        int minutes = line.content().minutes();
        if (line.content().span() != null || minutes % 15 == 0 || !(line.fresh() ? decimal(line) : tenths(line))) {
            return;
        }
        int likelier = minutes < 15 ? minutes * 10 : Math.round(minutes / 15f) * 15;
        Hours instead = Hours.ofMinutes(likelier);
        String typed = line.typed().isBlank()
                ? new Hours(minutes).decimal().stripTrailingZeros().toPlainString()
                : line.typed().strip();
        questions.add(new Question(
                key(QUARTER, line),
                line.id(),
                typed + " is " + line.content().hours() + ", not a quarter hour. Is it right?",
                new Question.Offer("Make it " + instead, "hours:" + line.id() + ":" + likelier)));
    }

    private static boolean tenths(Line line) {
        int minutes = line.content().minutes();
        return minutes % 6 == 0 && minutes % 5 != 0;
    }

    private static boolean decimal(Line line) {
        return DECIMAL.matcher(line.typed().strip().toLowerCase(Locale.ROOT)).matches();
    }

    /** More than six hours by the clock without 20 minutes between: asked, never deducted. */
    private void askAboutBreak() {
        List<ClockSpan> spans = lines.stream()
                .map(line -> line.content().span())
                .filter(Objects::nonNull)
                .sorted(Comparator.comparing(ClockSpan::start))
                .toList();
        int from = 0;
        int to = -DAY;
        for (ClockSpan span : spans) {
            int start = minute(span.start());
            if (start - to >= BREAK) {
                from = start;
            }
            to = Math.max(to, start + span.hours().minutes());
            if (to - from > LONG_STRETCH) {
                questions.add(new Question(
                        "no break " + from + " " + to,
                        null,
                        "More than 6 h by the clock without a break of 20 min. Was there one?"));
                return;
            }
        }
    }

    private static int minute(LocalTime time) {
        return time.getHour() * 60 + time.getMinute();
    }

    private void askAboutTravel() {
        Set<UUID> driven = lines.stream()
                .filter(line -> line.content().hourClass() == HourClass.TRAVEL)
                .map(line -> line.place().jobId())
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
        lines.stream()
                .map(Line::place)
                .filter(place -> place.onSite() && place.jobId() != null && !driven.contains(place.jobId()))
                .collect(Collectors.toMap(Place::jobId, place -> place, (one, other) -> one))
                .values()
                .stream()
                .sorted(Comparator.comparing(Place::number))
                .forEach(this::askAboutTravel);
    }

    private void askAboutTravel(Place place) {
        Integer oneWay = place.oneWayMinutes();
        Question.Offer offer = oneWay == null || oneWay == 0
                ? null
                : new Question.Offer(
                        "Add " + Hours.ofMinutes(2 * oneWay) + " of travel",
                        "travel:" + place.jobId() + ":" + 2 * oneWay);
        questions.add(new Question(
                "no travel " + place.jobId(),
                null,
                "Work at the site of " + place.number() + ", but no travel that day. Is it right?",
                offer));
    }

    static String removal(UUID id, int version) {
        return "remove " + id + " " + version;
    }

    private void askAboutRemoval(Entry entry) {
        questions.add(Question.holding(
                removal(entry.id(), entry.version()),
                entry.id(),
                "The box is empty: take " + entry.content().hours() + " on "
                        + entry.place().inWords() + " off this day?"));
    }
}
