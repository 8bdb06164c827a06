/** The first minutes of a shop: a one-time code proves who stands at the machine, then the shop and its owner are made. */
@ApplicationModule(allowedDependencies = {"shared", "web", "server", "trail", "shop", "people", "catalog"})
@NullMarked
package org.tallywright.setup;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
