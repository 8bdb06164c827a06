package org.tallywright.estimates.print;

import java.time.LocalDate;
import java.util.UUID;

/**
 * What a document says of itself.
 *
 * @param id of what it prints: the file's own id is made from it
 * @param on its date, which stands in for the moment of writing, so that the same document always gives the same bytes
 * @param foot at the left of each page's foot
 * @param pageOf "Page {0} of {1}"
 */
public record Imprint(UUID id, String title, String author, LocalDate on, String foot, String pageOf) {}
