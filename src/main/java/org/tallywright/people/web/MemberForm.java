package org.tallywright.people.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A person of the crew as typed. */
record MemberForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Nullable String name,
        @Nullable String role,
        @Nullable String active) {
    String typedName() {
        return name == null ? "" : name;
    }
}
