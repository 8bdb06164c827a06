package org.tallywright.measuring.web;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.measuring.Cut;
import org.tallywright.measuring.PartDetails;
import org.tallywright.measuring.Species;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Typed;
import org.tallywright.shared.Units;
import org.tallywright.web.FormReader;

/** A part of solid wood, as typed. */
record PartForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Nullable String piece,
        @Nullable String name,
        @Nullable String species,
        @Nullable String cut,
        @Nullable String width,
        @Nullable String moisture,
        @Nullable String note) {
    static final Map<String, String> CUTS = cuts();
    static final Map<String, String> WOODS = woods();

    PartForm {
        piece = piece == null ? "" : piece;
        name = name == null ? "" : name;
        species = species == null ? "" : species;
        cut = cut == null ? "" : cut;
        width = width == null ? "" : width;
        moisture = moisture == null ? "" : moisture;
        note = note == null ? "" : note;
    }

    private static Map<String, String> cuts() {
        Map<String, String> cuts = new LinkedHashMap<>();
        cuts.put(Cut.FLAT.code(), "Flat sawn");
        cuts.put(Cut.QUARTERED.code(), "Quartered");
        cuts.put(Cut.MIXED.code(), "Rift or mixed, reckoned as flat sawn");
        return cuts;
    }

    private static Map<String, String> woods() {
        Map<String, String> woods = new LinkedHashMap<>();
        for (Species species : Species.values()) {
            woods.put(species.code(), species.label());
        }
        return woods;
    }

    static PartForm blank() {
        return new PartForm(Ids.next(), null, "", "", "", "", "", "", "");
    }

    static PartForm of(UUID id, int version, PartDetails kept, Units units) {
        UUID pieceId = kept.pieceId();
        return new PartForm(
                id,
                version,
                pieceId == null ? "" : pieceId.toString(),
                kept.name(),
                kept.species().code(),
                kept.cut().code(),
                kept.width().formatInBox(units),
                kept.moisture().stripTrailingZeros().toPlainString(),
                kept.note());
    }

    @Nullable
    PartDetails read(FormReader read, Units units) {
        var pieceId = read.optional("piece", piece, () -> Reader.id(text(piece)));
        var words = read.field("name", () -> Typed.requiredLine(text(name), 120));
        var wood = read.field(
                "species", () -> pick(Species.values(), Species::code, species, "Choose a wood from the list."));
        var sawn = read.field("cut", () -> pick(Cut.values(), Cut::code, cut, "Say how the boards are cut."));
        var across = read.field("width", () -> Length.parseSize(text(width), units));
        var percent = read.field("moisture", () -> Reader.moisture(text(moisture)));
        var more = read.field("note", () -> Typed.block(text(note), 1000));
        return read.refused()
                        || words == null
                        || wood == null
                        || sawn == null
                        || across == null
                        || percent == null
                        || more == null
                ? null
                : new PartDetails(pieceId, words, wood, sawn, across, percent, more);
    }

    private static <T> T pick(
            T[] all, java.util.function.Function<T, String> code, @Nullable String typed, String sentence) {
        return Arrays.stream(all)
                .filter(one -> code.apply(one).equals(typed))
                .findFirst()
                .orElseThrow(() -> new NotUnderstood(sentence));
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }

    List<Stale.Row> beside(PartForm theirs) {
        return List.of(
                new Stale.Row("Part", text(theirs.name), text(name)),
                new Stale.Row("Wood", wood(theirs.species), wood(species)),
                new Stale.Row("Cut", sawn(theirs.cut), sawn(cut)),
                new Stale.Row("Width", text(theirs.width), text(width)),
                new Stale.Row("Moisture", text(theirs.moisture), text(moisture)),
                new Stale.Row("Note", text(theirs.note), text(note)));
    }

    private static String wood(@Nullable String code) {
        return WOODS.getOrDefault(text(code), text(code));
    }

    private static String sawn(@Nullable String code) {
        return CUTS.getOrDefault(text(code), text(code));
    }
}
