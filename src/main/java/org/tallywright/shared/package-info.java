/** The values everybody uses: money, hours, lengths, quantities and the ways in which typed words are refused. */
@ApplicationModule(type = ApplicationModule.Type.OPEN)
@NullMarked
package org.tallywright.shared;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
