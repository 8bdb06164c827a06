package org.tallywright.estimates;

import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Where lines of a working sum were copied from; given by the module that copies. Holds hours and quantities, no money. */
public interface LineOrigins {
    Origins of(UUID job);

    /** @param lines what a line was where it comes from, by the id of the task, material line or other cost */
    record Origins(Map<UUID, String> lines, List<Copy> copies) {
        public static final Origins NONE = new Origins(Map.of(), List.of());
    }

    /**
     * What came in by one press.
     *
     * @param removal where a press takes it out again
     * @param otherCosts whether it holds other costs, so that only who sees them takes it out
     */
    record Copy(String words, String removal, boolean otherCosts) {}
}
