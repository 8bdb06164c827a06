/** The hours: what each person's minutes went into, day by day, and the days without work on purpose. */
@ApplicationModule(allowedDependencies = {"shared", "web", "trail", "people", "shop", "jobs"})
@NullMarked
package org.tallywright.daylog;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
