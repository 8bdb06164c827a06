/** How good and how fast layouts of bars and sheets are, on published instances and on thirty jobs made by rule. */
@NullMarked
package org.tallywright.bench.cutting;

import org.jspecify.annotations.NullMarked;
