package org.tallywright.daylog.web;

import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.tallywright.daylog.Place;
import org.tallywright.daylog.Target;
import org.tallywright.shared.DayLine;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Slips;

/**
 * Finds what the words of a day line mean among the things the person is likely to have worked on, then among all open
 * ones, then in the catalogue. Order of the words does not matter, a slip of a letter is forgiven. Only one best fit counts
 * as understood; with two or none the person is asked.
 */
final class LineReader {
    private static final Set<String> SMALL =
            Set.of("the", "a", "an", "of", "and", "on", "for", "in", "to", "at", "with", "my", "some", "more", "up");

    /**
     * One part of the line.
     *
     * @param place what it means, or null
     * @param perhaps what it may mean, when it is not plain
     * @param ask the question when it is not plain, or null
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
            @Nullable String ask,
            @Nullable String problem) {
        private Heard asking(List<Place> among, String question) {
            return new Heard(typed, time, hourClass, null, among, note, reason, question, problem);
        }
    }

    private final List<Place> likely;
    private final List<Place> others;
    private final Supplier<Map<String, String>> kinds;

    /**
     * @param kinds names of the catalogue's task kinds, each with the name that it goes by now, asked for only when no open task
     *     fits
     */
    LineReader(List<Place> likely, List<Place> others, Supplier<Map<String, String>> kinds) {
        this.likely = List.copyOf(likely);
        Set<Target> first = likely.stream().map(Place::target).collect(Collectors.toSet());
        this.others = others.stream().filter(p -> !first.contains(p.target())).toList();
        this.kinds = kinds;
    }

    List<Heard> read(String line) {
        List<Heard> heard;
        try {
            heard = DayLine.split(line).stream().map(this::part).toList();
        } catch (NotUnderstood e) {
            return List.of(refused(line, e.sentence()));
        }
        List<Place> named = heard.stream()
                .map(Heard::place)
                .filter(Objects::nonNull)
                .distinct()
                .toList();
        return heard.stream()
                .map(one -> one.ask() != null && one.perhaps().isEmpty() && !named.isEmpty()
                        ? one.asking(named, one.ask())
                        : one)
                .toList();
    }

    private Heard part(String typed) {
        try {
            return understood(DayLine.Part.parse(typed));
        } catch (NotUnderstood e) {
            return refused(typed, e.sentence());
        }
    }

    private static Heard refused(String typed, String sentence) {
        return new Heard(typed, "", HourClass.DIRECT, null, List.of(), "", "", null, sentence);
    }

    private Heard understood(DayLine.Part part) {
        String note = part.note() == null ? "" : part.note();
        List<Place> best = best(part, note);
        best = best.isEmpty() ? underItsNewName(part.words()) : best;
        Place place = best.size() == 1 ? best.get(0) : null;
        HourClass given = part.hourClass();
        HourClass hourClass = given != null ? given : place != null ? place.usualClass() : HourClass.DIRECT;
        boolean rework = hourClass == HourClass.REWORK;
        String why = note.isEmpty() ? part.words() : note;
        Heard heard = new Heard(
                part.typed(),
                part.time().typed(),
                hourClass,
                place,
                best.size() > 1 ? best : List.of(),
                rework ? "" : note,
                rework ? why : "",
                null,
                null);
        return place != null ? heard : asked(heard, part, best);
    }

    private Heard asked(Heard heard, DayLine.Part part, List<Place> best) {
        if (best.size() > 1) {
            return heard.asking(best, "\"" + heard.typed() + "\" fits more than one. Which?");
        }
        String words = part.words().isEmpty() ? heard.note() + heard.reason() : part.words();
        String said = kind(words(words));
        String kind = said == null ? null : kinds.get().get(said);
        if (kind == null) {
            return heard.asking(List.of(), "Which task was \"" + heard.typed() + "\"?");
        }
        List<Place> jobs =
                others.stream().filter(place -> place.target().jobId() != null).toList();
        Heard named = heard.note().isEmpty() && heard.hourClass() != HourClass.REWORK
                ? new Heard(
                        heard.typed(), heard.time(), heard.hourClass(), null, jobs, words, heard.reason(), null, null)
                : heard;
        return named.asking(
                jobs,
                "\"" + heard.typed() + "\" sounds like " + kind + ", which no open job has as a task. On which job?");
    }

    /** The open tasks that bear the name which a merged kind is counted under now; none for any other kind. */
    private List<Place> underItsNewName(String words) {
        String said = kind(words(words));
        String now = said == null ? null : kinds.get().get(said);
        return now == null || now.equals(said) ? List.of() : fitting(words(now), List.of());
    }

    /** The one kind of the catalogue that the words fit best, or null. */
    private @Nullable String kind(List<Word> wanted) {
        if (wanted.isEmpty()) {
            return null;
        }
        Map<String, Integer> found = new HashMap<>();
        for (String name : kinds.get().keySet()) {
            List<String> stems = stems(name);
            int fit = wanted.stream().mapToInt(word -> Fit.in(stems, word)).sum();
            if (fit > 0) {
                found.put(name, fit);
            }
        }
        return found.entrySet().stream()
                .max(Map.Entry.<String, Integer>comparingByValue()
                        .thenComparing(
                                Map.Entry.<String, Integer>comparingByKey().reversed()))
                .map(Map.Entry::getKey)
                .orElse(null);
    }

    private List<Place> best(DayLine.Part part, String note) {
        List<Word> wanted = words(part.words().isEmpty() ? note : part.words());
        if (wanted.isEmpty()) {
            // "travel 1h": a task whose usual class it is, if there is one; which of several is asked.
            return ofClass(part.hourClass());
        }
        return fitting(wanted, part.words().isEmpty() ? List.of() : words(note));
    }

    private List<Place> fitting(List<Word> wanted, List<Word> aside) {
        List<Fit> fits = Stream.concat(
                        likely.stream().map(place -> Fit.of(place, wanted, aside, true)),
                        others.stream().map(place -> Fit.of(place, wanted, aside, false)))
                .filter(fit -> fit.names() > 0)
                .toList();
        Fit top = fits.stream().max(Fit.ORDER).orElse(null);
        return top == null
                ? List.of()
                : fits.stream()
                        .filter(fit -> Fit.ORDER.compare(fit, top) == 0)
                        .map(Fit::place)
                        .toList();
    }

    private List<Place> ofClass(@Nullable HourClass hourClass) {
        if (hourClass == null || hourClass == HourClass.DIRECT) {
            return List.of();
        }
        for (List<Place> among : List.of(likely, others)) {
            List<Place> fits = among.stream()
                    .filter(p -> p.usualClass() == hourClass && p.target().jobId() == null)
                    .toList();
            if (!fits.isEmpty()) {
                return fits;
            }
        }
        return List.of();
    }

    /**
     * How well the words fit; a word that fits letter by letter counts two, one with a slip counts one.
     *
     * @param all of words found anywhere
     * @param names of those, found in the task's or account's own name
     * @param aside of words of the note found anywhere
     */
    private record Fit(Place place, int all, int names, int aside, boolean likely) {
        static final Comparator<Fit> ORDER = Comparator.comparingInt(Fit::all)
                .thenComparingInt(Fit::names)
                .thenComparingInt(Fit::aside)
                .thenComparing(Fit::likely);

        static Fit of(Place place, List<Word> wanted, List<Word> note, boolean likely) {
            List<String> name = stems(place.name());
            List<String> around = stems(place.jobTitle() + " " + place.stage() + " " + place.number());
            int all = 0;
            int names = 0;
            for (Word word : wanted) {
                int named = in(name, word);
                names += named;
                all += Math.max(named, in(around, word));
            }
            int aside = note.stream()
                    .mapToInt(word -> Math.max(in(name, word), in(around, word)))
                    .sum();
            return new Fit(place, all, names, aside, likely);
        }

        static int in(List<String> stems, Word word) {
            int best = 0;
            for (String stem : stems) {
                if (stem.equals(word.stem) || word.stem.length() >= 3 && stem.startsWith(word.stem)) {
                    return 2;
                }
                boolean slip = Slips.oneOf(stem, word.stem) || Slips.oneOf(stem + "ing", word.typed);
                best = slip ? 1 : best;
            }
            return best;
        }
    }

    /** A word of the line, as typed and without its ending; a slip in the ending hides it. */
    private record Word(String typed, String stem) {}

    private static List<Word> words(String text) {
        return split(text)
                .map(word -> new Word(word, stem(word)))
                .filter(word -> !word.stem.isEmpty())
                .toList();
    }

    private static Stream<String> split(String text) {
        return Arrays.stream(text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+"))
                .filter(word -> !word.isEmpty() && !SMALL.contains(word));
    }

    /** Words without their endings: sanding, sanded and sands are all sand. */
    static List<String> stems(String text) {
        return split(text).map(LineReader::stem).filter(stem -> !stem.isEmpty()).toList();
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
