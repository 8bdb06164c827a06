package org.tallywright.catalog;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/** What comes first, over any number of steps. */
final class Precedence {
    private final Map<UUID, ? extends Collection<UUID>> before;

    /** @param before for each kind those that come directly before it */
    Precedence(Map<UUID, ? extends Collection<UUID>> before) {
        this.before = before;
    }

    /** Whether {@code first} comes before {@code later}, directly or through others. */
    boolean isBefore(UUID first, UUID later) {
        Set<UUID> seen = new HashSet<>();
        Deque<UUID> open = new ArrayDeque<>(before.containsKey(later) ? before.get(later) : Set.of());
        while (!open.isEmpty()) {
            UUID kind = open.pop();
            if (kind.equals(first)) {
                return true;
            }
            if (seen.add(kind) && before.containsKey(kind)) {
                open.addAll(before.get(kind));
            }
        }
        return false;
    }
}
