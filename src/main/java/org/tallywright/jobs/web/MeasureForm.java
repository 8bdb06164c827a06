package org.tallywright.jobs.web;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.tallywright.jobs.MeasureDetails;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Typed;
import org.tallywright.shared.Units;
import org.tallywright.web.FormReader;

/** A reading on site, as typed. */
record MeasureForm(
        @Nullable UUID id,
        @Nullable Integer version,
        String piece,
        String name,
        String length,
        String measuredOn,
        String note) {

    MeasureForm {
        piece = Texts.of(piece);
        name = Texts.of(name);
        length = Texts.of(length);
        measuredOn = Texts.of(measuredOn);
        note = Texts.of(note);
    }

    static MeasureForm blank(String piece, LocalDate today) {
        return new MeasureForm(Ids.next(), null, piece, "", "", today.toString(), "");
    }

    static MeasureForm of(UUID id, int version, MeasureDetails kept, Wording wording) {
        UUID pieceId = kept.pieceId();
        return new MeasureForm(
                id,
                version,
                pieceId == null ? "" : pieceId.toString(),
                kept.name(),
                wording.length(kept.length()),
                kept.measuredOn().toString(),
                kept.note());
    }

    @Nullable
    MeasureDetails read(FormReader read, Units units) {
        var pieceId = read.optional("piece", piece, () -> Reader.id(piece, "Pick a piece of this job."));
        var words = read.field("name", () -> Typed.requiredLine(name, 120));
        var reading = read.field("length", () -> Length.parse(length, units));
        var on = read.field("measuredOn", () -> Reader.day(measuredOn));
        var more = read.field("note", () -> Typed.block(note, 1000));
        return read.refused() || words == null || reading == null || on == null || more == null
                ? null
                : new MeasureDetails(pieceId, words, reading, on, more);
    }

    /** For an address: the piece's id when it is one. */
    String pieceOrNone() {
        return piece.matches("[0-9a-fA-F-]{36}") ? piece : "";
    }

    List<Stale.Row> beside(MeasureForm theirs, UnaryOperator<String> pieceName) {
        return List.of(
                new Stale.Row("Piece", pieceName.apply(theirs.piece), pieceName.apply(piece)),
                new Stale.Row("What", theirs.name, name),
                new Stale.Row("Length", theirs.length, length),
                new Stale.Row("Day", theirs.measuredOn, measuredOn),
                new Stale.Row("Note", theirs.note, note));
    }
}
