/** The PostgreSQL server that comes along where no other database is named, and the checks on its data at the start. */
@ApplicationModule(allowedDependencies = {"server"})
@NullMarked
package org.tallywright.db;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
