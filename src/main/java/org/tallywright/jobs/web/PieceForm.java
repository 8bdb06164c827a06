package org.tallywright.jobs.web;

import java.util.List;
import java.util.UUID;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Typed;
import org.tallywright.shared.Units;
import org.tallywright.web.FormReader;

/** A piece as typed. */
record PieceForm(
        @Nullable UUID id,
        @Nullable Integer version,
        String kind,
        String name,
        String width,
        String height,
        String depth,
        String count,
        String note) {
    PieceForm {
        kind = Texts.of(kind);
        name = Texts.of(name);
        width = Texts.of(width);
        height = Texts.of(height);
        depth = Texts.of(depth);
        count = Texts.of(count);
        note = Texts.of(note);
    }

    static PieceForm blank() {
        return new PieceForm(Ids.next(), null, "", "", "", "", "", "1", "");
    }

    static PieceForm of(UUID id, int version, PieceDetails kept, Wording wording) {
        UUID kindId = kept.pieceKindId();
        return new PieceForm(
                id,
                version,
                kindId == null ? "" : kindId.toString(),
                kept.name(),
                wording.length(kept.width()),
                wording.length(kept.height()),
                wording.length(kept.depth()),
                String.valueOf(kept.count()),
                kept.note());
    }

    @Nullable
    PieceDetails read(FormReader read, Units units) {
        var kindId = read.optional("kind", kind, () -> Reader.id(kind, "Pick a kind of piece from the list."));
        var words = read.field("name", () -> Typed.requiredLine(name, 120));
        var wide = read.optional("width", width, () -> Length.parseSize(width, units));
        var high = read.optional("height", height, () -> Length.parseSize(height, units));
        var deep = read.optional("depth", depth, () -> Length.parseSize(depth, units));
        var many = read.field("count", () -> Reader.count(count));
        var more = read.field("note", () -> Typed.block(note, 2000));
        return read.refused() || words == null || many == null || more == null
                ? null
                : new PieceDetails(kindId, words, wide, high, deep, many, more);
    }

    List<Stale.Row> beside(PieceForm theirs, UnaryOperator<String> kindName) {
        return List.of(
                new Stale.Row("Kind", kindName.apply(theirs.kind), kindName.apply(kind)),
                new Stale.Row("Name", theirs.name, name),
                new Stale.Row("Width", theirs.width, width),
                new Stale.Row("Height", theirs.height, height),
                new Stale.Row("Depth", theirs.depth, depth),
                new Stale.Row("Number alike", theirs.count, count),
                new Stale.Row("Note", theirs.note, note));
    }
}
