package org.tallywright.measuring;

import java.util.List;

/**
 * One computed figure of an opening.
 *
 * @param from the readings it was computed from
 */
public record Finding(Sum sum, Reckoned figure, List<Reading> from) {}
