package org.tallywright.jobs;

import java.time.Instant;
import org.tallywright.shared.Quantity;

/**
 * How a task ended.
 *
 * @param quantity what it really came to, in the task's unit
 * @param confirmed counted or measured by somebody; otherwise the planned quantity taken as it was
 * @param at the moment the work ended, from which its waits run
 */
public record Finish(Quantity quantity, boolean confirmed, Instant at) {}
