/** What the shop's own past says about hours: the rate book, its forecasts and the record of how good they were. */
@ApplicationModule(allowedDependencies = {"shared", "web", "trail", "people", "shop", "catalog"})
@NullMarked
package org.tallywright.calibration;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
