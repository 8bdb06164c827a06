/** The demo shop: an invented scenario of ten jobs that fills an empty shop, always ending today, and can be removed again. */
@ApplicationModule(
        allowedDependencies = {
            "shared",
            "web",
            "trail",
            "shop",
            "people",
            "catalog",
            "jobs",
            "estimates",
            "takeoff",
            "photos",
            "setup"
        })
@NullMarked
package org.tallywright.demo;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
