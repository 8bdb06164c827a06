package org.tallywright.people;

import jakarta.persistence.Convert;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Refused;
import org.tallywright.web.Role;

/** Someone who signs in or whose hours are logged. Never deleted: his hours stay his. */
@Entity
class Person {
    @Id
    private UUID id;

    private String name;

    @Convert(converter = RoleColumn.class)
    private Role role;

    private boolean active;
    private Instant createdAt;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    Person() {}

    Person(UUID id, String name, Role role, Instant createdAt) {
        this.id = id;
        this.name = name;
        this.role = role;
        this.active = true;
        this.createdAt = createdAt;
    }

    UUID id() {
        return id;
    }

    String name() {
        return name;
    }

    Role role() {
        return role;
    }

    boolean active() {
        return active;
    }

    int version() {
        return version == null ? 0 : version;
    }

    void rename(String newName) {
        name = newName;
    }

    /** @throws Refused when the shop would be left without an owner */
    void become(Role newRole, boolean nowActive, boolean otherOwnersRemain) {
        boolean stopsOwning = role == Role.OWNER && active && (newRole != Role.OWNER || !nowActive);
        if (stopsOwning && !otherOwnersRemain) {
            throw new Refused("role", "The shop needs an owner; make somebody else one first.");
        }
        role = newRole;
        active = nowActive;
    }
}
