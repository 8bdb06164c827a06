package org.tallywright.daylog;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

/**
 * Minutes of one person on one date, as stored.
 *
 * @param place what is known of its target
 * @param soFar all minutes of this person on the same task
 * @param correction whether it corrects a locked week; its minutes may be less than nothing
 */
public record Entry(
        UUID id,
        UUID personId,
        String personName,
        LocalDate date,
        Content content,
        Place place,
        UUID loggedBy,
        String loggedByName,
        Instant loggedAt,
        int soFar,
        boolean correction,
        int version) {}
