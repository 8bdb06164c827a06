package org.tallywright.catalog;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderBy;
import jakarta.persistence.Version;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A kind of piece with the tasks it proposes; they are saved and versioned as one. */
@Entity
class PieceKind {
    @Id
    private UUID id;

    private String name;
    private boolean active = true;

    @ElementCollection
    @CollectionTable(name = "piece_kind_task", joinColumns = @JoinColumn(name = "piece_kind_id"))
    @OrderBy("position")
    private List<KeptLine> lines = new ArrayList<>();

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected PieceKind() {}

    @SuppressWarnings("NullAway.Init")
    PieceKind(SavePieceKind first) {
        this.id = first.id();
        rewrite(first);
    }

    @Nullable
    Integer version() {
        return version;
    }

    SavePieceKind content() {
        return new SavePieceKind(
                id, null, name, lines.stream().map(KeptLine::plain).toList());
    }

    final void rewrite(SavePieceKind save) {
        name = save.name();
        if (!lines.stream().map(KeptLine::plain).toList().equals(save.lines())) {
            lines.clear();
            save.lines().forEach(line -> lines.add(KeptLine.of(lines.size() + 1, line)));
        }
    }

    void use(boolean inUse) {
        active = inUse;
    }
}
