package org.tallywright.takeoff;

import java.util.List;
import java.util.Map;
import org.tallywright.takeoff.formula.Amount;

/**
 * Formulas worked out for sizes.
 *
 * @param settings each with its value, as far as they can be worked out
 * @param problems what could not be
 */
public record Worked(Map<String, Amount> settings, List<PartDetails> parts, List<RecipeError> problems) {}
