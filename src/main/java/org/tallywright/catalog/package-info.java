/** What the shop does and builds with: its stages, task kinds, kinds of piece and materials. */
@ApplicationModule(allowedDependencies = {"shared", "web", "trail"})
@NullMarked
package org.tallywright.catalog;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
