package org.tallywright.takeoff.formula;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * A formula of the shop, read and ready to be worked out: names, numbers and lengths with + - * / and brackets, comparisons,
 * and the functions {@code min}, {@code max}, {@code up} and {@code down} (to a whole number, or to a step) and
 * {@code if(condition, then, else)}.
 *
 * <p>A number and a length are never added; a length over a length is a number; a length times a length is an area. All of it
 * is exact. A formula has at most 300 characters and 30 brackets inside each other, so working it out always ends.
 */
public final class Formula {
    public static final int MOST_CHARACTERS = 300;
    private final String text;
    private final Term term;
    private final Set<String> names;

    private Formula(String text, Term term, Set<String> names) {
        this.text = text;
        this.term = term;
        this.names = names;
    }

    /** @throws FormulaError with the character it is about */
    public static Formula parse(String text) {
        if (text.length() > MOST_CHARACTERS) {
            throw new FormulaError(MOST_CHARACTERS + 1, "a formula has at most " + MOST_CHARACTERS + " characters.");
        }
        List<Token> tokens = Tokens.of(text);
        FormulaReader reader = new FormulaReader(tokens);
        Term term = reader.read();
        Set<String> names = new TreeSet<>();
        term.names(names);
        return new Formula(text, term, names);
    }

    /** The names it needs. */
    public Set<String> names() {
        return names;
    }

    /** @throws FormulaError for an unknown name, a division by nothing, or kinds that do not go together */
    public Amount value(Map<String, Amount> known) {
        return term.value(known);
    }

    /** As {@link #value}, and it has to be of that kind. */
    public Amount value(Map<String, Amount> known, int power) {
        Amount value = value(known);
        if (value.power() != power && !(value.signum() == 0 && value.power() == 0)) {
            throw new FormulaError(1, "this comes to " + value.kind() + "; wanted is " + Amount.kind(power) + ".");
        }
        return value.power() == power ? value : new Amount(value.top(), value.bottom(), power);
    }

    @Override
    public String toString() {
        return text;
    }
}
