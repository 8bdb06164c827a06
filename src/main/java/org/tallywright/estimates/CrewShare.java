package org.tallywright.estimates;

import jakarta.persistence.Embeddable;
import java.util.UUID;
import org.tallywright.shared.Percent;

/** A person's share of the hours of a job, in percent of all of them. */
@Embeddable
public record CrewShare(UUID personId, Percent sharePercent) {}
