/** The people of the shop: who signs in, in which role, and what an hour of theirs costs. */
@ApplicationModule(allowedDependencies = {"shared", "web", "trail"})
@NullMarked
package org.tallywright.people;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
