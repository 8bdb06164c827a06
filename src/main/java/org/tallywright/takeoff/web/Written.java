package org.tallywright.takeoff.web;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.tallywright.cutting.Grain;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;
import org.tallywright.takeoff.PartDetails;
import org.tallywright.takeoff.Recipe;
import org.tallywright.takeoff.formula.Amount;

/** Sizes, amounts and what is said of a part, in words. */
final class Written {
    private Written() {}

    static String suffix(Units units) {
        return units == Units.METRIC ? "mm" : "in";
    }

    /** As on a cut list: inches only, or millimetres. */
    static String size(Length length, Units units) {
        return units == Units.METRIC ? length.format(units) : length.formatInches();
    }

    static String amount(@Nullable Amount amount, Units units) {
        if (amount == null) {
            return "";
        }
        if (amount.power() == 1) {
            return size(new Length(amount.whole(RoundingMode.HALF_UP).longValue()), units);
        }
        return amount.power() == 0
                ? amount.decimal()
                        .setScale(3, RoundingMode.HALF_UP)
                        .stripTrailingZeros()
                        .toPlainString()
                : amount.kind();
    }

    static String grain(Grain grain) {
        return switch (grain) {
            case ALONG -> "grain along the length";
            case ACROSS -> "grain across the length";
            case ANY -> "";
        };
    }

    static String more(Recipe.PartRule rule) {
        List<String> words = new ArrayList<>();
        add(words, !grain(rule.grain()).isEmpty(), grain(rule.grain()));
        add(words, !rule.matched().isEmpty(), "matches " + rule.matched());
        add(words, !rule.longEdges().toString().equals("0"), "long edges banded " + rule.longEdges());
        add(words, !rule.shortEdges().toString().equals("0"), "short edges banded " + rule.shortEdges());
        add(words, !rule.faces().toString().equals("0"), "faces finished " + rule.faces());
        add(words, !rule.joints().toString().equals("0"), "joints " + rule.joints());
        return String.join(", ", words);
    }

    static String more(PartDetails part) {
        List<String> words = new ArrayList<>();
        add(words, part.grain() != Grain.ANY, grain(part.grain()));
        add(words, !part.matched().isEmpty(), "matches " + part.matched());
        int edges = part.longEdges() + part.shortEdges();
        add(words, edges > 0, "band " + part.longEdges() + " long, " + part.shortEdges() + " short");
        return String.join(", ", words);
    }

    private static void add(List<String> words, boolean when, String word) {
        if (when) {
            words.add(word);
        }
    }

    static String word(Grain grain) {
        return grain.name().toLowerCase(Locale.ROOT);
    }
}
