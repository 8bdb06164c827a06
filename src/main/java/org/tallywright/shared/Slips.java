package org.tallywright.shared;

/** Tells a slip of the thumb from another word: one letter too many, too few, wrong, or two swapped. */
public final class Slips {
    /** Shorter words are too close to each other: rip and lip, cut and cup. */
    private static final int SHORTEST = 4;

    private Slips() {}

    public static boolean oneOf(String meant, String typed) {
        int longer = Math.max(meant.length(), typed.length());
        int shorter = Math.min(meant.length(), typed.length());
        if (shorter < SHORTEST || longer - shorter > 1 || hasDigit(meant) || hasDigit(typed)) {
            return false;
        }
        int from = 0;
        while (from < shorter && meant.charAt(from) == typed.charAt(from)) {
            from++;
        }
        int back = 0;
        while (back < shorter - from
                && meant.charAt(meant.length() - 1 - back) == typed.charAt(typed.length() - 1 - back)) {
            back++;
        }
        int left = meant.length() - from - back;
        int typedLeft = typed.length() - from - back;
        boolean swapped = left == 2
                && typedLeft == 2
                && meant.charAt(from) == typed.charAt(from + 1)
                && meant.charAt(from + 1) == typed.charAt(from);
        return swapped || left <= 1 && typedLeft <= 1;
    }

    private static boolean hasDigit(String word) {
        return word.chars().anyMatch(Character::isDigit);
    }
}
