/** Names who is acting, so that the database can keep the trail of every change to hours, money and roles. */
@ApplicationModule(type = ApplicationModule.Type.OPEN, allowedDependencies = "shared")
@NullMarked
package org.tallywright.trail;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
