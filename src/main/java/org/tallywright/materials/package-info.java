/** Material bought, taken for a job, sent back and kept; stock, offcuts and what share of the bought ends in the work. */
@ApplicationModule(allowedDependencies = {"shared", "web", "trail", "catalog", "calibration", "jobs", "people"})
@NullMarked
package org.tallywright.materials;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
