/** Brings what the calibration knows to the places where a person decides: the estimate, the running job, the closed one. */
@ApplicationModule(
        allowedDependencies = {
            "shared",
            "web",
            "trail",
            "people",
            "shop",
            "clients",
            "catalog",
            "calibration",
            "daylog",
            "jobs",
            "estimates",
            "materials"
        })
@NullMarked
package org.tallywright.learning;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
