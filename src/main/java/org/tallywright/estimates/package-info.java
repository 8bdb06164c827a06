/** The working sum of a job, the price by one formula, and the numbered, frozen bids issued from it. */
@ApplicationModule(
        displayName = "Estimates",
        allowedDependencies = {"shared", "web", "trail", "people", "shop", "clients", "catalog", "jobs"})
@NullMarked
package org.tallywright.estimates;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
