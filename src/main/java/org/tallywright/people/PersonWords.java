package org.tallywright.people;

import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;

/** How names of people are read. */
final class PersonWords {
    private PersonWords() {}

    static String name(String typed) {
        return line(typed, "name", "Please give a name.");
    }

    static String signInName(String typed) {
        String name = line(typed, "signInName", "Please choose a sign-in name.");
        if (name.length() < 3) {
            throw new Refused("signInName", "Use at least 3 characters.");
        }
        return name;
    }

    /** What was typed to sign in, without what no sign-in name can hold: such a name is simply unknown. */
    static String signInNameAsTyped(String typed) {
        String printable = typed.replaceAll("\\p{Cntrl}|[\\p{Cs}]", "").strip();
        return printable.substring(0, Math.min(printable.length(), 80));
    }

    private static String line(String typed, String field, String missing) {
        String line;
        try {
            line = Typed.line(typed, 80);
        } catch (Refused refused) {
            throw refused.at(field);
        }
        if (line.isEmpty()) {
            throw new Refused(field, missing);
        }
        return line;
    }
}
