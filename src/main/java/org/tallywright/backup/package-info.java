/** The whole shop in one file, and back: made from any table that the database has, without a list to keep up. */
@ApplicationModule(allowedDependencies = {"server", "db", "shared", "web"})
@NullMarked
package org.tallywright.backup;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
