/** The page shell: who is signed in, who may open which route, error pages and messages. */
@ApplicationModule(type = ApplicationModule.Type.OPEN, allowedDependencies = "shared")
@NullMarked
package org.tallywright.web;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
