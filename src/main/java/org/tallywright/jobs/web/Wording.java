package org.tallywright.jobs.web;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Length;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shared.Unit;
import org.tallywright.shared.Units;

/** Sizes and quantities in the shop's way of measuring, and events in a sentence. */
@Component
class Wording {
    private final ObjectProvider<ShopConventions> shop;

    Wording(ObjectProvider<ShopConventions> shop) {
        this.shop = shop;
    }

    Units units() {
        return shop.getIfAvailable(() -> ShopConventions.DEFAULT).units();
    }

    /** What stands behind a box for a length. */
    String lengthSuffix() {
        return units() == Units.METRIC ? "mm" : "in";
    }

    String length(@Nullable Length length) {
        return length == null ? "" : length.format(units());
    }

    /** {@code 5' 1 3/8" wide, 1' 6" high, 1' 3" deep}, as far as known. */
    String sizes(@Nullable Length width, @Nullable Length height, @Nullable Length depth) {
        List<String> known = new ArrayList<>();
        add(known, width, "wide");
        add(known, height, "high");
        add(known, depth, "deep");
        return String.join(", ", known);
    }

    private void add(List<String> known, @Nullable Length length, String word) {
        if (length != null) {
            known.add(length.format(units()) + " " + word);
        }
    }

    static String quantity(Quantity quantity, Unit unit) {
        return quantity + " " + unit.code();
    }

    static String event(EventRows.Row event) {
        String subject = event.subject() == null ? "" : event.subject();
        return switch (event.kind()) {
            case "walk-through" -> "Walk-through held";
            case "job" ->
                event.from().isEmpty()
                        ? "Job opened as " + article(event.to())
                        : "Job went from " + event.from() + " to " + event.to();
            case "stage" -> "Stage " + subject + ": " + stageWord(event.to());
            default -> event.from().isEmpty() ? subject + ": added" : subject + ": " + event.to();
        };
    }

    private static String article(String state) {
        return "a " + state;
    }

    private static String stageWord(String to) {
        return to.equals("ahead") ? "taken back" : to;
    }
}
