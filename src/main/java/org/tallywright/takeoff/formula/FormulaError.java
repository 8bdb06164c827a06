package org.tallywright.takeoff.formula;

/** A formula that cannot be read or worked out, with the place in it. */
public final class FormulaError extends RuntimeException {
    private final int position;
    private final String sentence;

    FormulaError(int position, String sentence) {
        super(sentence);
        this.position = position;
        this.sentence = sentence;
    }

    /** A value with more digits than are kept. */
    public static FormulaError tooLarge() {
        return new FormulaError(1, "this becomes too large.");
    }

    /** The character it is about, from 1. */
    public int position() {
        return position;
    }

    public String sentence() {
        return "At character " + position + ": " + sentence;
    }
}
