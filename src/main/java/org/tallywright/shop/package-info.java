/** The one shop of this installation: its name, time zone, units, currency and the figures new estimates start from. */
@ApplicationModule(allowedDependencies = {"shared", "web", "trail"})
@NullMarked
package org.tallywright.shop;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
