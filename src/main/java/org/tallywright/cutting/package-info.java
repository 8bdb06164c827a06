/** How parts are laid out on sheets, bars and boards: plain Java, exact whole lengths, the same answer every time. */
@ApplicationModule(allowedDependencies = {})
@NullMarked
package org.tallywright.cutting;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
