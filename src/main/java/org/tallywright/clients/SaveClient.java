package org.tallywright.clients;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Adds a client or rewrites one. */
public record SaveClient(UUID id, @Nullable Integer version, String name, String phone, String email, String note) {
    SaveClient unversioned() {
        return new SaveClient(id, null, name, phone, email, note);
    }
}
