/** How the server starts: its address, TLS on the shop's network, and refusals in one plain sentence. */
@ApplicationModule(allowedDependencies = {})
@NullMarked
package org.tallywright.server;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
