package org.tallywright.estimates;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.tallywright.estimates.BidDocument.OptionRow;
import org.tallywright.estimates.BidDocument.PieceRow;
import org.tallywright.estimates.BidDocument.PriceRow;

/** What a bid's paper says otherwise than the paper before it: words, pieces and prices that the client reads anyway. */
public final class PaperDifference {
    private PaperDifference() {}

    /**
     * @param part "title", "scope", "pieces", "exclusions", "price", "allowances",
     *     "options", "payments", "days" or "terms"
     * @param old empty for what is new
     * @param now empty for what is gone
     */
    public record Change(String part, String old, String now) {
        public String sort() {
            return old.isEmpty() ? "added" : now.isEmpty() ? "dropped" : "changed";
        }
    }

    public static List<Change> between(BidDocument old, BidDocument now) {
        List<Change> changes = new ArrayList<>();
        line(changes, "title", old.title(), now.title());
        lines(changes, "scope", old.scope(), now.scope());
        named(changes, "pieces", pieces(old), pieces(now));
        lines(changes, "exclusions", old.exclusions(), now.exclusions());
        named(changes, "price", prices(old.prices()), prices(now.prices()));
        named(changes, "allowances", prices(old.allowances()), prices(now.allowances()));
        named(changes, "options", options(old), options(now));
        named(changes, "payments", prices(old.payments()), prices(now.payments()));
        line(changes, "days", old.addedDays(), now.addedDays());
        lines(changes, "terms", old.terms(), now.terms());
        return changes;
    }

    private static void line(List<Change> changes, String part, String old, String now) {
        if (!old.equals(now)) {
            changes.add(new Change(part, old, now));
        }
    }

    private static void lines(List<Change> changes, String part, List<String> old, List<String> now) {
        less(old, now).forEach(line -> changes.add(new Change(part, line, "")));
        less(now, old).forEach(line -> changes.add(new Change(part, "", line)));
    }

    /** Those of the first list that the second has not, each counted as often as it stands there. */
    private static List<String> less(List<String> some, List<String> others) {
        List<String> rest = new ArrayList<>(some);
        others.forEach(rest::remove);
        return rest;
    }

    private static void named(List<Change> changes, String part, Map<String, String> old, Map<String, String> now) {
        old.forEach((name, was) -> line(changes, part, was, now.getOrDefault(name, "")));
        now.forEach((name, is) -> {
            if (!old.containsKey(name)) {
                changes.add(new Change(part, "", is));
            }
        });
    }

    private static Map<String, String> pieces(BidDocument document) {
        return keyed(document.pieces(), PieceRow::name, piece -> {
            String count = piece.count() == 1 ? piece.name() : piece.count() + " " + piece.name();
            return piece.size().isEmpty() ? count : count + ": " + piece.size();
        });
    }

    private static Map<String, String> prices(List<PriceRow> rows) {
        return keyed(rows, PriceRow::label, row -> row.label() + " " + row.amount());
    }

    private static Map<String, String> options(BidDocument document) {
        return keyed(document.options(), OptionRow::name, PaperDifference::option);
    }

    /** All that the client reads of it, so that another word of it is a change too. */
    private static String option(OptionRow option) {
        StringBuilder text = new StringBuilder(option.name() + " " + option.amount());
        if (!option.oneOf().isEmpty()) {
            text.append(", one of ").append(option.oneOf());
        }
        option.allowances()
                .forEach(row -> text.append(", with ")
                        .append(row.label())
                        .append(" for ")
                        .append(row.amount()));
        return option.words().isEmpty() ? text.toString() : text + ": " + String.join(" ", option.words());
    }

    private static <T> Map<String, String> keyed(List<T> rows, Function<T, String> name, Function<T, String> text) {
        return rows.stream().collect(Collectors.toMap(name, text, (one, two) -> one + "; " + two, LinkedHashMap::new));
    }
}
