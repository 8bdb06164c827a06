package org.tallywright.shared;

/** Cleans typed text before it is kept. Lengths are counted as people count: an emoji of one code point is one. */
public final class Typed {
    private Typed() {}

    /**
     * One line: no space at the ends, runs of space made one.
     *
     * @param max the most characters kept
     * @throws Refused for control characters and over-long text; the field is left for the caller to name
     */
    public static String line(String typed, int max) {
        String oneLine = typed.replaceAll("[\\t\\r\\n\\u2028\\u2029\\u0085]", " ");
        return checked(oneLine.replaceAll("[\\s\\u00a0]+", " ").strip(), max);
    }

    /** As {@link #line}, and there must be something left. */
    public static String requiredLine(String typed, int max) {
        String line = line(typed, max);
        if (line.isEmpty()) {
            throw new Refused("Please fill this in.");
        }
        return line;
    }

    /** Several lines: line ends made alike, space at line ends dropped, blank lines kept but for those at the ends. */
    public static String block(String typed, int max) {
        String lines = typed.replaceAll("\\r\\n?|[\\u2028\\u2029\\u0085]", "\n").replace('\t', ' ');
        return checked(lines.replaceAll("[ \\u00a0]+(?=\\n|$)", "").strip(), max);
    }

    private static String checked(String clean, int max) {
        int length = clean.codePointCount(0, clean.length());
        if (length > max) {
            throw new Refused("This is " + (length - max) + " characters too long; there is room for " + max + ".");
        }
        if (clean.codePoints().anyMatch(Typed::unprintable)) {
            throw new Refused("This holds a character that cannot be printed; type it again by hand.");
        }
        return clean;
    }

    /** Control characters, lone halves of surrogate pairs, and marks that turn the direction of the text after them. */
    private static boolean unprintable(int c) {
        return c != '\n' && Character.isISOControl(c)
                || Character.getType(c) == Character.SURROGATE
                || c >= 0x202a && c <= 0x202e
                || c >= 0x2066 && c <= 0x2069
                || (c & 0xfffe) == 0xfffe;
    }
}
