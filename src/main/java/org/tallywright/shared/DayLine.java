package org.tallywright.shared;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A day in one line: {@code glue-up 2h30, sanding 45m, rework 20m door rail}. Parts are divided by commas (one between
 * two digits is a decimal comma), semicolons and line ends. Whose task the words mean is decided elsewhere.
 */
public record DayLine(List<Part> parts) {
    private static final int MOST = 2000;
    private static final int MOST_PARTS = 40;
    private static final Pattern BETWEEN = Pattern.compile("[;\\n\\r]|,(?!\\d)|(?<!\\d),");

    public DayLine {
        parts = List.copyOf(parts);
    }

    /**
     * One part of the line.
     *
     * @param typed the part as it was typed
     * @param words what stands before the time, without the hour class where that leads; may be empty
     * @param hourClass the class named in the words, or null
     * @param note what stands after the time, or null
     */
    public record Part(
            String typed,
            String words,
            @Nullable HourClass hourClass,
            LoggedTime time,
            @Nullable String note) {
        /** @throws NotUnderstood naming the part that was not understood */
        public static Part parse(String typed) {
            return DayLinePart.read(typed);
        }
    }

    /** @throws NotUnderstood at the first part that is not understood; use {@link #split} to report each by itself */
    public static DayLine parse(String typed) {
        List<String> pieces = split(typed);
        if (pieces.isEmpty()) {
            throw new NotUnderstood("Write what you did and for how long, such as: sanding 45m, glue-up 2h30.");
        }
        return new DayLine(pieces.stream().map(Part::parse).toList());
    }

    /** The parts, trimmed, empty ones dropped, each ready for {@link Part#parse}. */
    public static List<String> split(String typed) {
        if (typed.length() > MOST) {
            throw new NotUnderstood("That is too much for one line; put at most " + MOST_PARTS + " entries in it.");
        }
        List<String> pieces = new ArrayList<>();
        Matcher m = BETWEEN.matcher(typed);
        int from = 0;
        while (m.find()) {
            add(pieces, typed.substring(from, m.start()));
            from = m.end();
        }
        add(pieces, typed.substring(from));
        if (pieces.size() > MOST_PARTS) {
            throw new NotUnderstood("That is too much for one line; put at most " + MOST_PARTS + " entries in it.");
        }
        return pieces;
    }

    private static void add(List<String> pieces, String piece) {
        if (!piece.isBlank()) {
            pieces.add(piece.strip());
        }
    }
}
