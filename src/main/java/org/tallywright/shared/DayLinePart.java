package org.tallywright.shared;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Finds the time in one part of a day line. A time with a unit, a colon or a range is taken wherever it stands; a bare
 * number only at the end ({@code sanding 2}), because "sanding 2 doors" does not say how long it took.
 */
final class DayLinePart {
    private static final int LONGEST_TIME = 9;
    private static final Pattern DURATION = Pattern.compile(
            "(?:\\d[\\d.,]*|[.,]\\d+)?(?: ?\\d+[ -])?(?: ?\\d+/\\d+)? ?(?:h|hr|hrs|hours?|m|min|mins|minutes?)\\.?"
                    + "|\\d{1,6} ?(?:h|hr|hrs|hours?)\\.?(?: and)? ?\\d{1,3}(?: ?(?:m|min|mins|minutes?)\\.?)?"
                    + "|\\d{1,6}:\\d{1,2}(?: ?h)?");
    private static final Pattern BARE = Pattern.compile("\\d+(?:[.,]\\d+)?|[.,]\\d+|(?:\\d+[ -])?\\d{1,2}/\\d{1,2}");
    private static final Set<HourClass> LEADING = EnumSet.of(HourClass.REWORK, HourClass.CALL_BACK, HourClass.SET_UP);

    private DayLinePart() {}

    static DayLine.Part read(String typed) {
        String line = clean(typed);
        String[] tokens = line.isEmpty() ? new String[0] : line.split(" ");
        int[] found = explicit(tokens, 0);
        if (found == null) {
            found = bareAtEnd(tokens);
        } else if (explicit(tokens, found[1]) != null) {
            throw new NotUnderstood(
                    "\"" + Decimals.shown(typed) + "\" holds two times; put a comma between the entries.");
        }
        if (found == null) {
            throw new NotUnderstood(
                    "How long did \"" + Decimals.shown(typed) + "\" take? Write the time behind it, like 45m or 2h30.");
        }
        LoggedTime time = LoggedTime.parse(join(tokens, found[0], found[1]));
        String words = join(tokens, 0, found[0]).replaceFirst(" ?[:=-]$", "");
        String note = join(tokens, found[1], tokens.length).replaceFirst("^[:-] ?", "");
        return classed(typed.strip(), words, time, note.isEmpty() ? null : note);
    }

    private static String clean(String typed) {
        try {
            return Typed.line(typed, 200);
        } catch (Refused e) {
            throw new NotUnderstood(e.sentence());
        }
    }

    private static DayLine.Part classed(String typed, String words, LoggedTime time, @Nullable String note) {
        if (words.isEmpty() && note != null) {
            // The time came first: what stands behind it is named by it, "20m rework hinge side".
            Classed behind = classed(note);
            return new DayLine.Part(typed, "", behind.hourClass, time, behind.words.isEmpty() ? null : behind.words);
        }
        Classed before = classed(words);
        return new DayLine.Part(typed, before.words, before.hourClass, time, note);
    }

    private record Classed(@Nullable HourClass hourClass, String words) {}

    /** The hour class that is all of the words, or stands at their beginning or end, and the words without it. */
    private static Classed classed(String words) {
        Optional<HourClass> whole = HourClass.find(words);
        if (whole.isPresent()) {
            return new Classed(whole.get(), "");
        }
        String[] tokens = words.split(" ");
        int all = tokens.length;
        for (int n = Math.min(2, all - 1); n > 0; n--) {
            Optional<HourClass> first = HourClass.find(join(tokens, 0, n)).filter(LEADING::contains);
            if (first.isPresent()) {
                return new Classed(first.get(), join(tokens, n, all));
            }
            Optional<HourClass> last =
                    HourClass.find(join(tokens, all - n, all)).filter(LEADING::contains);
            if (last.isPresent()) {
                return new Classed(last.get(), join(tokens, 0, all - n));
            }
        }
        return new Classed(null, words);
    }

    /** The first and longest run of tokens that is plainly a time, as from and to, or null. */
    private static int @Nullable [] explicit(String[] tokens, int from) {
        for (int i = from; i < tokens.length; i++) {
            for (int j = Math.min(tokens.length, i + LONGEST_TIME); j > i; j--) {
                if (isExplicit(Decimals.tidy(join(tokens, i, j)))) {
                    refuseLooseMinutes(tokens, i, j);
                    return new int[] {i, j};
                }
            }
        }
        return null;
    }

    /** "sanding 2h 12 doors" may be 2 h 12 or 2 h for a dozen doors. */
    private static void refuseLooseMinutes(String[] tokens, int from, int to) {
        boolean loose = to - from > 1 && tokens[to - 1].matches("\\d{1,3}");
        if (loose && to < tokens.length && Character.isLetterOrDigit(tokens[to].codePointAt(0))) {
            String both = join(tokens, from, to);
            throw new NotUnderstood(
                    "\"" + Decimals.shown(both + " " + tokens[to]) + "\" can be read in two ways; write "
                            + both.replace(" ", "") + ", or put a dash before the note.");
        }
    }

    private static boolean isExplicit(String words) {
        if (words.isEmpty() || words.length() > 60) {
            return false;
        }
        String[] parts = words.split(" ?(?:\\+|&|\\band\\b) ?", -1);
        return isDuration(words) || Arrays.stream(parts).allMatch(p -> ClockRanges.looksLike(p) || isDuration(p));
    }

    private static boolean isDuration(String words) {
        return words.matches("[\\d.,].*") && DURATION.matcher(words).matches();
    }

    private static int @Nullable [] bareAtEnd(String[] tokens) {
        int n = tokens.length;
        if (n >= 2
                && tokens[n - 2].matches("\\d{1,2}")
                && BARE.matcher(Decimals.tidy(tokens[n - 1])).matches()
                && Decimals.tidy(tokens[n - 1]).matches("[1-9]/[2-8]")) {
            return new int[] {n - 2, n};
        }
        if (n >= 1 && BARE.matcher(Decimals.tidy(tokens[n - 1])).matches()) {
            return new int[] {n - 1, n};
        }
        return null;
    }

    private static String join(String[] tokens, int from, int to) {
        return String.join(" ", Arrays.copyOfRange(tokens, from, to));
    }
}
