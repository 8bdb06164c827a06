package org.tallywright.takeoff;

/**
 * A line of formulas that cannot be used.
 *
 * @param line from 1; 0 where it is about the whole
 * @param column the words of the column, empty where it is about the line
 */
public record RecipeError(int line, String column, String sentence) {
    public String words() {
        String place = line == 0 ? "" : "Line " + line + (column.isEmpty() ? ": " : ", " + column + ": ");
        return place + sentence;
    }
}
