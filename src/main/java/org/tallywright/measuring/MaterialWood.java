package org.tallywright.measuring;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What wood a material is, as the shop says. */
@Entity
class MaterialWood {
    @Id
    private UUID id;

    private String species;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected MaterialWood() {}

    @SuppressWarnings("NullAway.Init")
    MaterialWood(UUID materialId, @Nullable Species species) {
        this.id = materialId;
        say(species);
    }

    final void say(@Nullable Species wood) {
        species = wood == null ? "" : wood.code();
    }

    UUID id() {
        return id;
    }

    Optional<Species> species() {
        return Species.of(species);
    }

    int version() {
        return version == null ? 0 : version;
    }
}
