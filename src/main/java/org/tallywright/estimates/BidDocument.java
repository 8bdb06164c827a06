package org.tallywright.estimates;

import java.util.List;

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
        String lawNote) {
    static final int FORM = 1;

    public record PieceRow(String name, int count, String size) {}

    public record PriceRow(String label, String amount) {}
}
