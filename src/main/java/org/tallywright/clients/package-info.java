/** Who the work is for and where it is done. */
@ApplicationModule(allowedDependencies = {"shared", "web"})
@NullMarked
package org.tallywright.clients;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
