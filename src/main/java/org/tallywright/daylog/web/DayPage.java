package org.tallywright.daylog.web;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.tallywright.daylog.DayReads.Mark;
import org.tallywright.daylog.Question.Offer;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Stale;

/**
 * The day sheet as the page shows it.
 *
 * @param action where the sheet is sent
 * @param errors box to sentence, in the order of the page; the key "" is the whole day
 * @param total of what stands in the boxes and was understood
 * @param usual the shop's usual day
 * @param versions what is kept and what was wanted, where the two met
 * @param choices what a row to pick offers
 * @param week what is to be said about its week and the days before
 * @param spare blank rows for the days that a phone makes of this one while there is no signal; only where it stands still itself
 * @param zone the shop's time zone, by which a phone without a signal knows the date
 * @param answered keys of the questions that were answered before this page came back
 * @param photos where photos of the day's jobs go, on one's own sheet of today
 * @param material where material used on the day is entered, or empty where it is not one's own
 * @param all whether the choices hold every open task and the closed jobs
 */
record DayPage(
        LocalDate date,
        String title,
        boolean today,
        boolean future,
        Whose whose,
        Links links,
        String action,
        List<Row> rows,
        String line,
        Map<String, String> errors,
        List<Ask> asks,
        Hours total,
        Hours usual,
        List<Cure> curing,
        @Nullable Mark mark,
        Marking marking,
        List<Stale.Row> versions,
        List<Choices> choices,
        InWeek week,
        List<Row> spare,
        String zone,
        Set<String> answered,
        boolean all,
        List<Link> photos,
        String material,
        ClockFace clock) {

    /**
     * The day in its week.
     *
     * @param fixed why the day stands still, or null
     * @param href of the week
     * @param missing weekdays before this one that have neither hours nor a mark
     */
    record InWeek(@Nullable String fixed, String href, List<WeekPage.Gap> missing) {}

    /** The note of the mark as it stands in its box. */
    record Marking(String note, @Nullable String error) {}

    /**
     * Whose day it is.
     *
     * @param crew others whose day may be opened; empty where there is no choice
     */
    record Whose(UUID id, String name, boolean own, List<Link> crew) {}

    record Link(String label, String href, boolean current) {}

    /** The days beside this one; no next one after today. */
    record Links(String previous, @Nullable String next, String today, String hours) {}

    /**
     * One row of the sheet.
     *
     * @param box start of the names and ids of its boxes: {@code row.3}
     * @param title what the hours went into; empty in a row to pick
     * @param aside job, stage and what is logged so far
     * @param heard the part of the line that filled it, or null
     * @param conflict what the entry says now, where it was changed elsewhere
     * @param open whether its folded boxes show
     * @param offers what puts its errors right with one tap
     * @param why it is offered, or empty
     */
    record Row(
            String box,
            RowForm form,
            String title,
            String aside,
            String state,
            @Nullable String heard,
            @Nullable String conflict,
            List<Choices> perhaps,
            boolean open,
            boolean fromMemory,
            Map<String, String> errors,
            List<Ask> asks,
            List<Offer> offers,
            String why) {
        /** By what a kept draft finds its row again, whatever place it then stands in. */
        public String key() {
            return form.saved() ? form.id().toString() : form.pick() ? "pick" : form.what() + " " + form.hourClass();
        }

        /** What the folded boxes hold, in one line; empty when they say nothing beyond direct hours. */
        public String said() {
            String special = Stream.of(HourClass.values())
                    .filter(known -> known != HourClass.DIRECT && known.code().equals(form.hourClass()))
                    .map(HourClass::label)
                    .findFirst()
                    .orElse("");
            return Stream.of(special, form.reason(), form.note())
                    .filter(part -> !part.isBlank())
                    .collect(Collectors.joining(", "));
        }

        public String classOptions() {
            return ClassOptions.of(form.hourClass());
        }

        public @Nullable String error(String field) {
            return errors.get(field);
        }

        public boolean has(String field) {
            return errors.containsKey(field);
        }
    }

    /** A question, answered by one tap. */
    record Ask(String key, String sentence, @Nullable Offer offer) {}

    record Cure(String title, String aside, String until) {}

    record Choices(String label, List<Choice> choices) {}

    record Choice(String value, String label) {}

    boolean blocked() {
        return !errors.isEmpty();
    }
}
