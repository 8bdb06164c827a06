package org.tallywright.estimates;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.tallywright.estimates.print.PaperSize;

/**
 * All that the page of a bid prints, in the words and formats of the day it was issued. The page is made from this and
 * nothing else, so it reads the same after every rate, name, unit and setting has changed. Holds nothing that the
 * client may not see: no hours, no cost, no margin.
 *
 * @param form raised when a field is added; older documents are read as they are
 * @param validUntil "24 December 2026"
 * @param addedDays working days that a change adds, as typed; empty for a bid
 * @param lawNote that local law decides, as it was worded then
 * @param prices the lines of the price, the last one the total
 * @param paper the sheet that the shop prints on; documents of form 1 do not say
 * @param options that the client may take, each with its total; none before form 3
 * @param allowances stated sums that the price holds for things not chosen yet; none before form 4
 * @param payments steps in which the total is paid; none before form 4
 */
public record BidDocument(
        int form,
        String kind,
        String number,
        String title,
        String shopName,
        List<String> shopContact,
        String issuedOn,
        String validUntil,
        String clientName,
        String siteAddress,
        String jobNumber,
        String jobTitle,
        List<String> scope,
        List<PieceRow> pieces,
        List<String> exclusions,
        String addedDays,
        List<PriceRow> prices,
        List<String> terms,
        String lawNote,
        String paper,
        List<OptionRow> options,
        List<PriceRow> allowances,
        List<PriceRow> payments) {
    static final int FORM = 5;

    public BidDocument {
        options = List.copyOf(Objects.requireNonNullElseGet(options, List::of));
        allowances = List.copyOf(Objects.requireNonNullElseGet(allowances, List::of));
        payments = List.copyOf(Objects.requireNonNullElseGet(payments, List::of));
        paper = Objects.requireNonNullElseGet(paper, () -> older(prices));
    }

    private static String older(List<PriceRow> prices) {
        boolean dollars = prices.stream().anyMatch(row -> row.amount().contains("$"));
        return (dollars ? PaperSize.LETTER : PaperSize.A4).code();
    }

    public record PieceRow(String name, int count, String size) {}

    /**
     * @param id that a tick sends back
     * @param oneOf group of options that exclude each other, or empty; none before form 5
     * @param allowances stated sums that the option holds; none before form 5
     */
    public record OptionRow(
            UUID id, String name, List<String> words, String amount, String oneOf, List<PriceRow> allowances) {
        public OptionRow {
            oneOf = Objects.requireNonNullElse(oneOf, "");
            allowances = List.copyOf(Objects.requireNonNullElseGet(allowances, List::of));
        }
    }

    /** @param name of options that exclude each other; empty for those that stand alone */
    public record Group(String name, List<OptionRow> options) {
        public boolean holdsOneOf(Ticks ticks) {
            return options.stream().anyMatch(option -> ticks.holds(option.id()));
        }
    }

    /** The options by group, each group where its first option stands. */
    public List<Group> groups() {
        Map<String, List<OptionRow>> groups = new LinkedHashMap<>();
        options.forEach(
                option -> groups.computeIfAbsent(option.oneOf().toLowerCase(Locale.ROOT), name -> new ArrayList<>())
                        .add(option));
        return groups.values().stream()
                .map(held -> new Group(held.get(0).oneOf(), held))
                .toList();
    }

    public record PriceRow(String label, String amount) {}
}
