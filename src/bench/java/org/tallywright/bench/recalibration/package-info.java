/** How long a shop of ten years waits for a new calibration. */
@NullMarked
package org.tallywright.bench.recalibration;

import org.jspecify.annotations.NullMarked;
