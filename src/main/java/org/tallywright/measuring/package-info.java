/** What was measured on site, what follows from it by geometry, and how far solid wood will move in that air. */
@ApplicationModule(
        displayName = "Site measure",
        allowedDependencies = {"shared", "web", "trail", "people", "shop", "catalog", "jobs", "photos"})
@NullMarked
package org.tallywright.measuring;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
