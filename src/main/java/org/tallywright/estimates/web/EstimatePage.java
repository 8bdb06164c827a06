package org.tallywright.estimates.web;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.estimates.EstimateSheet;
import org.tallywright.estimates.HoursSaid;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Money;
import org.tallywright.web.Tag;

/**
 * A job's estimate for owner or lead. What only the owner may see is all in {@code money}, which a lead's page has not.
 *
 * @param by how the tasks are grouped: piece or stage
 * @param missing kinds of work that are often left out and are not among the lines
 * @param outlook what the shop's own past says of the hours; null where there is no task to offer
 * @param open whether lines may be changed
 */
record EstimatePage(
        String number,
        String by,
        boolean open,
        List<Group> groups,
        Hours hours,
        List<EstimateSheet.MaterialRow> materials,
        Money material,
        List<String> missing,
        @Nullable Outlook outlook,
        @Nullable OwnersPart money) {

    /** What finished work says of the hours; hours only. */
    record Outlook(HoursSaid said, List<OutlookLine> lines) {}

    record OutlookLine(String name, Hours estimated, HoursSaid.Line said) {}

    /** Tasks of one piece or stage. */
    record Group(String name, List<EstimateSheet.TaskRow> tasks, Hours hours) {}

    /**
     * @param confidence the price is made at: 50, 80 or 90, 0 for the named percentage, empty where there is no choice
     * @param risk what it may cost and leave, or none
     * @param hint how far that can be trusted, or empty
     * @param why what stands in the way of a price, or empty
     * @param whatIf the strip on which another price is tried, or null while there is none to compare
     * @param next "bid" or "change order"
     * @param canIssue whether there is something to issue
     */
    record OwnersPart(
            List<EstimateSheet.OtherRow> others,
            Money other,
            String confidence,
            List<Rung> ladder,
            List<Rung> risk,
            String hint,
            String why,
            String next,
            boolean canIssue,
            String heading,
            String kept,
            String perHour,
            @Nullable WhatIfPage whatIf,
            List<OptionPart> options,
            List<BidLine> bids) {}

    /** @param path of its form below the estimate's */
    record OptionEntry(String text, String path) {}

    /**
     * An option of the estimate.
     *
     * @param tag where it is decided
     * @param left the client did not take it
     * @param again it can be offered again
     * @param price null where it holds no line or has no rate
     */
    record OptionPart(
            UUID id,
            String name,
            String words,
            String oneOf,
            @Nullable Tag tag,
            boolean left,
            boolean again,
            List<OptionEntry> lines,
            @Nullable Money price,
            List<Rung> ladder) {}

    /**
     * One line of the price.
     *
     * @param kind step, sum or price: how heavy the line is drawn
     * @param formula how it is computed, in the figures used
     */
    record Rung(String name, String value, String kind, String formula, List<Entry> entries) {}

    record Entry(String text, String value) {}

    record BidLine(UUID id, String number, String title, Tag tag, String when, Money price) {}
}
