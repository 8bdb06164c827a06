package org.tallywright.jobs;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What the owner writes about a job, already cleaned.
 *
 * @param note internal; for owner and lead only
 */
public record JobDetails(
        UUID clientId, UUID siteId, String title, @Nullable LocalDate promisedOn, String note) {}
