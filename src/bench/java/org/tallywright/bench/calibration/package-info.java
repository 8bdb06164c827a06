/** How well the engine predicts hours on a file of finished tasks, by the rolling protocol of src/docs/calibration.md. */
@NullMarked
package org.tallywright.bench.calibration;

import org.jspecify.annotations.NullMarked;
