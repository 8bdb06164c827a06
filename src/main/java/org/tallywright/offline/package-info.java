/** What lets pages work without a signal: who is signed in, a fresh form token, and answers that a queue of saves can read. */
@ApplicationModule(allowedDependencies = {"shared", "web"})
@NullMarked
package org.tallywright.offline;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
