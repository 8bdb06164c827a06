package org.tallywright.catalog;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A stage of the shop's work. Positions are unique at the end of a transaction, so two can swap inside one. */
@Entity
class Stage {
    @Id
    private UUID id;

    private String name;
    private int position;
    private boolean active = true;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected Stage() {}

    Stage(UUID id, String name, int position) {
        this.id = id;
        this.name = name;
        this.position = position;
    }

    UUID id() {
        return id;
    }

    String name() {
        return name;
    }

    int position() {
        return position;
    }

    boolean isActive() {
        return active;
    }

    @Nullable
    Integer version() {
        return version;
    }

    void rename(String newName) {
        name = newName;
    }

    void moveTo(int newPosition) {
        position = newPosition;
    }

    void use(boolean inUse) {
        active = inUse;
    }
}
