package org.tallywright.takeoff;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The shop's own formulas of a kind of piece. */
@Entity
class PieceKindRecipe {
    @Id
    private UUID id;

    private String body;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected PieceKindRecipe() {}

    @SuppressWarnings("NullAway.Init")
    PieceKindRecipe(UUID pieceKindId, String body) {
        this.id = pieceKindId;
        this.body = body;
    }

    void rewrite(String text) {
        body = text;
    }

    String body() {
        return body;
    }

    boolean isAt(@Nullable Integer seen) {
        return version != null && version.equals(seen);
    }
}
