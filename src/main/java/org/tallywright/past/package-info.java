/** Estimates from the past: pieces and jobs the shop has built, with what they really took, copied into a new estimate. */
@ApplicationModule(
        displayName = "Past work",
        allowedDependencies = {
            "shared",
            "web",
            "trail",
            "people",
            "clients",
            "catalog",
            "calibration",
            "daylog",
            "jobs",
            "estimates",
            "materials",
            "costing",
            "takeoff"
        })
@NullMarked
package org.tallywright.past;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
