package org.tallywright.jobs;

import java.time.LocalDate;
import java.util.UUID;

/** A closed or lost job was reopened. Published in the same transaction. */
public record JobReopened(UUID jobId, LocalDate on, UUID by) {}
