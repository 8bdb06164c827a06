/** What the bookkeeper takes away: hours with pay, purchases with receipts, as CSV. Reads only. */
@ApplicationModule(allowedDependencies = {"shared", "web", "people", "jobs", "daylog", "catalog", "materials"})
@NullMarked
package org.tallywright.books;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
