/** From sizes to parts by formulas of the shop, from parts to task quantities, a cut list and a list of what to buy. */
@ApplicationModule(
        allowedDependencies = {
            "shared",
            "web",
            "trail",
            "catalog",
            "calibration",
            "jobs",
            "materials",
            "estimates",
            "cutting"
        })
@NullMarked
package org.tallywright.takeoff;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
