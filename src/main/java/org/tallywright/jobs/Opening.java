package org.tallywright.jobs;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.clients.SaveClient;
import org.tallywright.clients.SaveSite;

/**
 * A job to open, with its client and site as far as they are new; all ids are made by the page.
 *
 * @param newClient null for a client that is known
 * @param newSite null for a site that is known
 */
public record Opening(
        UUID id,
        UUID clientId,
        UUID siteId,
        @Nullable SaveClient newClient,
        @Nullable SaveSite newSite,
        String title,
        @Nullable LocalDate promisedOn,
        String note) {
    JobDetails details() {
        return new JobDetails(clientId, siteId, title, promisedOn, note);
    }
}
