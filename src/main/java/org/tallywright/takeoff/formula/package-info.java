/** The small language of the shop's formulas: lengths and numbers, exact, bounded, with errors told by position; plain Java. */
@NullMarked
package org.tallywright.takeoff.formula;

import org.jspecify.annotations.NullMarked;
