/** Pages of the rate book and of the record of how good the bids were. */
@NullMarked
package org.tallywright.calibration.web;

import org.jspecify.annotations.NullMarked;
