/** What a client may see of a job, and the link by which he sees it. */
@ApplicationModule(allowedDependencies = {"shared", "web", "trail", "jobs", "estimates", "photos"})
@NullMarked
package org.tallywright.sharing;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
