package org.tallywright.daylog.web;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.tallywright.daylog.Place;
import org.tallywright.shared.DayLine;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.NotUnderstood;

/**
 * Finds what the words of a day line mean among the things the person is likely to have worked on. Only one best fit
 * counts as understood; with two or none the person is asked.
 */
final class LineReader {
    private static final Set<String> SMALL =
            Set.of("the", "a", "an", "of", "and", "on", "for", "in", "to", "at", "with", "my", "some", "more", "up");

    /**
     * One part of the line.
     *
     * @param place what it means, or null
     * @param perhaps what it may mean, when it is not plain
     * @param problem why it cannot become a row at all, or null
     */
    record Heard(
            String typed,
            String time,
            HourClass hourClass,
            @Nullable Place place,
            List<Place> perhaps,
            String note,
            String reason,
            @Nullable String problem) {}

    private final List<Place> likely;
    private final List<Place> others;

    LineReader(List<Place> likely, List<Place> others) {
        this.likely = List.copyOf(likely);
        this.others = List.copyOf(others);
    }

    List<Heard> read(String line) {
        try {
            return DayLine.split(line).stream().map(this::part).toList();
        } catch (NotUnderstood e) {
            return List.of(refused(line, e.sentence()));
        }
    }

    private Heard part(String typed) {
        try {
            return understood(DayLine.Part.parse(typed));
        } catch (NotUnderstood e) {
            return refused(typed, e.sentence());
        }
    }

    private static Heard refused(String typed, String sentence) {
        return new Heard(typed, "", HourClass.DIRECT, null, List.of(), "", "", sentence);
    }

    private Heard understood(DayLine.Part part) {
        String note = part.note() == null ? "" : part.note();
        List<Place> best = best(part, note);
        Place place = best.size() == 1 ? best.get(0) : null;
        HourClass given = part.hourClass();
        HourClass hourClass = given != null ? given : place != null ? place.usualClass() : HourClass.DIRECT;
        boolean rework = hourClass == HourClass.REWORK;
        String why = note.isEmpty() ? part.words() : note;
        return new Heard(
                part.typed(),
                part.time().typed(),
                hourClass,
                place,
                best.size() > 1 ? best : List.of(),
                rework ? "" : note,
                rework ? why : "",
                null);
    }

    private List<Place> best(DayLine.Part part, String note) {
        for (List<Place> among : List.of(likely, others)) {
            List<Place> fits = best(among, part.words(), note, part.hourClass());
            if (!fits.isEmpty()) {
                return fits;
            }
        }
        return List.of();
    }

    private static List<Place> best(List<Place> among, String words, String note, @Nullable HourClass hourClass) {
        List<String> wanted = stems(words.isEmpty() ? note : words);
        if (wanted.isEmpty()) {
            // "travel 1h": a task whose usual class it is, if there is one; which of several is asked.
            return hourClass == null
                    ? List.of()
                    : among.stream().filter(p -> p.usualClass() == hourClass).toList();
        }
        List<Fit> fits = new ArrayList<>();
        for (Place place : among) {
            Fit fit = Fit.of(place, wanted, words.isEmpty() ? List.of() : stems(note));
            if (fit.names() > 0) {
                fits.add(fit);
            }
        }
        Fit top = fits.stream().max(Fit.ORDER).orElse(null);
        return top == null
                ? List.of()
                : fits.stream()
                        .filter(fit -> Fit.ORDER.compare(fit, top) == 0)
                        .map(Fit::place)
                        .toList();
    }

    /**
     * How well the words fit.
     *
     * @param all words found anywhere
     * @param names of those, found in the task's or account's own name
     * @param aside words of the note found anywhere
     */
    private record Fit(Place place, int all, int names, int aside) {
        static final Comparator<Fit> ORDER =
                Comparator.comparingInt(Fit::all).thenComparingInt(Fit::names).thenComparingInt(Fit::aside);

        static Fit of(Place place, List<String> wanted, List<String> note) {
            List<String> name = stems(place.name());
            List<String> around = stems(place.jobTitle() + " " + place.stage() + " " + place.number());
            int all = 0;
            int names = 0;
            for (String word : wanted) {
                boolean named = in(name, word);
                names += named ? 1 : 0;
                all += named || in(around, word) ? 1 : 0;
            }
            int aside = (int) note.stream()
                    .filter(word -> in(name, word) || in(around, word))
                    .count();
            return new Fit(place, all, names, aside);
        }

        private static boolean in(List<String> stems, String word) {
            return stems.stream().anyMatch(stem -> stem.equals(word) || word.length() >= 3 && stem.startsWith(word));
        }
    }

    /** Words without their endings: sanding, sanded and sands are all sand. */
    static List<String> stems(String text) {
        return Arrays.stream(text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+"))
                .filter(word -> !word.isEmpty() && !SMALL.contains(word))
                .map(LineReader::stem)
                .filter(stem -> !stem.isEmpty())
                .toList();
    }

    private static String stem(String word) {
        String stem = word;
        if (stem.length() > 4) {
            stem = stem.replaceFirst("(?:ing|ed|es|s)$", "");
        } else if (stem.length() > 3) {
            stem = stem.replaceFirst("s$", "");
        }
        stem = stem.length() > 3 ? stem.replaceFirst("e$", "") : stem;
        return stem.replaceFirst("([bdglmnprt])\\1$", "$1");
    }
}
