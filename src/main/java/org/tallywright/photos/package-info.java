/** Photos of a job: read, turned upright, made small and rid of the place they were taken at before they are kept. */
@ApplicationModule(allowedDependencies = {"shared", "web", "trail", "people", "jobs"})
@NullMarked
package org.tallywright.photos;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
