package org.tallywright.takeoff.web;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.cutting.Grain;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Typed;
import org.tallywright.shared.Units;
import org.tallywright.takeoff.PartDetails;
import org.tallywright.takeoff.PartRows;
import org.tallywright.web.FormReader;

/** A part as typed. */
record PartForm(
        @Nullable UUID id,
        @Nullable Integer version,
        String name,
        String quantity,
        String length,
        String width,
        String material,
        String grain,
        String matched,
        String longEdges,
        String shortEdges,
        String faces,
        String joints,
        String slot) {
    PartForm {
        name = or(name);
        quantity = or(quantity);
        length = or(length);
        width = or(width);
        material = or(material);
        grain = or(grain);
        matched = or(matched);
        longEdges = or(longEdges);
        shortEdges = or(shortEdges);
        faces = or(faces);
        joints = or(joints);
        slot = or(slot);
    }

    private static String or(@Nullable String sent) {
        return sent == null ? "" : sent;
    }

    static PartForm blank() {
        return new PartForm(Ids.next(), null, "", "1", "", "", "", "any", "", "0", "0", "0", "0", "");
    }

    static PartForm of(PartRows.Row row, Units units) {
        PartDetails part = row.details();
        UUID material = part.materialId();
        return new PartForm(
                row.id(),
                row.version(),
                part.name(),
                String.valueOf(part.quantity()),
                part.length().formatInBox(units),
                part.width().formatInBox(units),
                material == null ? "" : material.toString(),
                Written.word(part.grain()),
                part.matched(),
                String.valueOf(part.longEdges()),
                String.valueOf(part.shortEdges()),
                String.valueOf(part.faces()),
                String.valueOf(part.joints()),
                part.slot());
    }

    /** @param keptSlot what the formulas call the part's material, kept where a part of theirs is changed */
    @Nullable
    PartDetails read(FormReader read, Units units, String keptSlot) {
        String called = read.field("name", () -> Typed.requiredLine(name, 120));
        Integer many = read.field("quantity", () -> count(quantity, 1, 9_999));
        Length along = read.field("length", () -> Length.parseSize(length, units));
        Length wide = read.field("width", () -> Length.parseSize(width, units));
        UUID of = read.optional("material", material, () -> id(material));
        Grain lies = read.field("grain", () -> grain(grain));
        String together = read.field("matched", () -> Typed.line(matched, 20));
        Integer longs = read.field("longEdges", () -> count(longEdges, 0, 2));
        Integer shorts = read.field("shortEdges", () -> count(shortEdges, 0, 2));
        Integer finished = read.field("faces", () -> count(faces, 0, 2));
        Integer joined = read.field("joints", () -> count(joints, 0, 99));
        if (called == null
                || many == null
                || along == null
                || wide == null
                || lies == null
                || together == null
                || longs == null
                || shorts == null
                || finished == null
                || joined == null
                || read.refused()) {
            return null;
        }
        return new PartDetails(
                called, many, along, wide, of, keptSlot, lies, together, longs, shorts, finished, joined);
    }

    /** Both versions of a part, for one whose save came too late. */
    List<Stale.Row> beside(PartForm theirs, Map<String, String> materials) {
        return List.of(
                new Stale.Row("Part", theirs.name, name),
                new Stale.Row("How many", theirs.quantity, quantity),
                new Stale.Row("Length", theirs.length, length),
                new Stale.Row("Width", theirs.width, width),
                new Stale.Row(
                        "Material",
                        materials.getOrDefault(theirs.material, ""),
                        materials.getOrDefault(material, material)),
                new Stale.Row("Grain", theirs.grain, grain),
                new Stale.Row("Matched with", theirs.matched, matched),
                new Stale.Row("Long edges", theirs.longEdges, longEdges),
                new Stale.Row("Short edges", theirs.shortEdges, shortEdges),
                new Stale.Row("Faces", theirs.faces, faces),
                new Stale.Row("Joints", theirs.joints, joints));
    }

    static UUID id(String typed) {
        try {
            return UUID.fromString(typed.strip());
        } catch (IllegalArgumentException e) {
            throw new NotUnderstood("Pick a material of the catalogue.");
        }
    }

    static Grain grain(String typed) {
        return switch (typed.strip().toLowerCase(Locale.ROOT)) {
            case "", "any" -> Grain.ANY;
            case "along" -> Grain.ALONG;
            case "across" -> Grain.ACROSS;
            default -> throw new NotUnderstood("Grain is along, across or any.");
        };
    }

    static int count(String typed, int least, int most) {
        String tidy = typed.strip();
        if (tidy.isEmpty() && least == 0) {
            return 0;
        }
        if (!tidy.matches("\\d{1,4}") || Integer.parseInt(tidy) < least || Integer.parseInt(tidy) > most) {
            throw new NotUnderstood("Give a whole number from " + least + " to " + most + ".");
        }
        return Integer.parseInt(tidy);
    }
}
