package org.tallywright.proof;

import org.junit.jupiter.api.Test;
import org.springframework.modulith.core.ApplicationModules;
import org.tallywright.Application;

/** The module graph: no cycle, nothing closed is reached into, and no arrow that a package-info does not list. */
class ModularityTest {
    @Test
    void followsTheListedArrows() {
        ApplicationModules.of(Application.class).verify();
    }
}
