package org.tallywright.jobs;

import java.time.LocalDate;
import java.util.UUID;

/** A job was closed. Published in the closing transaction, so that a plain listener can freeze the final figures. */
public record JobClosed(UUID jobId, LocalDate closedOn, UUID by) {}
