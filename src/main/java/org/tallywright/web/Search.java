package org.tallywright.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Locale;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;

/**
 * The words of a search as they came in the address. What cannot be looked for is said above the list, which then holds
 * everything.
 *
 * @param typed what stands in the box again
 * @param words to look for, runs of space made one; empty finds all
 * @param understood false where the words hold a sign that cannot be printed, or are too long
 */
public record Search(String typed, String words, boolean understood) {
    /** Nothing is looked for. */
    public static final Search NONE = new Search("", "", true);

    private static final int LONGEST = 200;
    private static final int UNPROCESSABLE = 422;

    /** Whether that text holds the words, capital letters or not. */
    public boolean finds(String text) {
        return text.toLowerCase(Locale.ROOT).contains(words.toLowerCase(Locale.ROOT));
    }

    /** Reads the words, and answers with status 422 those that cannot be understood. */
    public static Search of(String typed, HttpServletResponse response) {
        try {
            String words = Typed.line(typed, LONGEST);
            return new Search(words, words, true);
        } catch (Refused refused) {
            response.setStatus(UNPROCESSABLE);
            return new Search(typed.replaceAll("\\p{Cntrl}", ""), "", false);
        }
    }
}
