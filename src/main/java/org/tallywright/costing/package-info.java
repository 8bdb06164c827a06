/** What a job cost beside what was bid: to date while it runs, and frozen in a review when it closes. */
@ApplicationModule(
        allowedDependencies = {
            "shared",
            "web",
            "trail",
            "people",
            "shop",
            "clients",
            "catalog",
            "jobs",
            "estimates",
            "daylog",
            "materials"
        })
@NullMarked
package org.tallywright.costing;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
