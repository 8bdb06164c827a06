package org.tallywright.estimates;

import java.util.Set;
import java.util.UUID;

/**
 * A yes by the link.
 *
 * @param name as the client typed it
 * @param options that he ticked, by their ids on the paper
 * @param from the network address it came from, as the server saw it
 */
public record ClientYes(String name, Set<UUID> options, String from) {
    public ClientYes {
        options = Set.copyOf(options);
    }
}
