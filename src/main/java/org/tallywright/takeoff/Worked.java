package org.tallywright.takeoff;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.tallywright.takeoff.formula.Amount;

/**
 * Formulas worked out for sizes.
 *
 * @param settings each with its value, as far as they can be worked out
 * @param rules of each part, the line it comes from: its name, with its number where several share the name
 * @param problems what could not be
 */
public record Worked(
        Map<String, Amount> settings, List<PartDetails> parts, List<String> rules, List<RecipeError> problems) {

    /** In the order of the formulas. */
    Map<String, PartDetails> byRule() {
        Map<String, PartDetails> byRule = new LinkedHashMap<>();
        for (int i = 0; i < parts.size(); i++) {
            byRule.put(rules.get(i), parts.get(i));
        }
        return byRule;
    }
}
