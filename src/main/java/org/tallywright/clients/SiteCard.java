package org.tallywright.clients;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Where a client's work is done.
 *
 * @param accessNote how to get in; for the crew on the job, never for a client's page
 * @param oneWayMinutes the drive there, where known
 * @param occupied people live or work around the work
 * @param outOfSquare old plaster, walls out of square
 * @param stairs carried up stairs or by lift
 */
public record SiteCard(
        UUID id,
        UUID clientId,
        String address,
        String accessNote,
        @Nullable Integer oneWayMinutes,
        boolean occupied,
        boolean outOfSquare,
        boolean stairs,
        int version) {

    /** The conditions that drive hours on site, in words. */
    public List<String> conditions() {
        List<String> words = new ArrayList<>();
        if (occupied) {
            words.add("occupied");
        }
        if (outOfSquare) {
            words.add("out of square");
        }
        if (stairs) {
            words.add("stairs or lift");
        }
        return words;
    }
}
