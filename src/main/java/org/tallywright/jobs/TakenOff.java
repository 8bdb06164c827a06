package org.tallywright.jobs;

import java.util.Map;
import java.util.UUID;
import org.tallywright.shared.Quantity;

/** What the parts of a piece come to, task kind by task kind; given by the module that keeps the parts. */
public interface TakenOff {
    /**
     * For all pieces alike, in the unit of the task kind; empty where the piece has no parts. A kind that is counted as
     * another stands under its own id.
     */
    Map<UUID, Quantity> quantities(UUID jobId, UUID pieceId);
}
