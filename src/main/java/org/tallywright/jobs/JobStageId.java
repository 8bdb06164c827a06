package org.tallywright.jobs;

import jakarta.persistence.Embeddable;
import java.io.Serializable;
import java.util.UUID;

/** A stage of the shop in one job. */
@Embeddable
public record JobStageId(UUID jobId, UUID stageId) implements Serializable {}
