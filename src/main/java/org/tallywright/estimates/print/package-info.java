/** A document on pages of paper, as PDF: words wrapped, rows kept whole, pages numbered. Knows nothing of bids. */
@NullMarked
package org.tallywright.estimates.print;

import org.jspecify.annotations.NullMarked;
