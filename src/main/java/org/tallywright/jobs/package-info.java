/** Jobs from measure to close: their pieces, stages, tasks, waits, punch list and the dated record of what changed. */
@ApplicationModule(allowedDependencies = {"shared", "web", "trail", "people", "clients", "catalog"})
@NullMarked
package org.tallywright.jobs;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
