package org.tallywright.measuring.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.util.MultiValueMap;
import org.tallywright.measuring.Mark;
import org.tallywright.measuring.OpeningDetails;
import org.tallywright.measuring.Reading;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Typed;
import org.tallywright.shared.Units;
import org.tallywright.web.FormReader;

/** An opening as typed: one box for each reading, named as {@link Reading#box} says, and lines for the marks. */
record OpeningForm(@Nullable UUID id, @Nullable Integer version, Map<String, String> typed) {
    private static final Length INCH = Length.ofSixtyFourths(64);

    static OpeningForm of(MultiValueMap<String, String> typed) {
        Map<String, String> kept = new TreeMap<>();
        typed.keySet().forEach(name -> kept.put(name, first(typed, name)));
        UUID id = null;
        Integer version = null;
        try {
            id = UUID.fromString(first(typed, "id"));
            version = first(typed, "version").isEmpty() ? null : Integer.valueOf(first(typed, "version"));
        } catch (IllegalArgumentException e) {
            version = first(typed, "version").isEmpty() ? null : Integer.valueOf(-1);
        }
        return new OpeningForm(id, version, kept);
    }

    private static String first(MultiValueMap<String, String> typed, String name) {
        String value = typed.getFirst(name);
        return value == null ? "" : value;
    }

    static OpeningForm blank(String piece, LocalDate today, Units units) {
        Map<String, String> typed = new TreeMap<>();
        typed.put("piece", piece);
        typed.put("measuredOn", today.toString());
        typed.put("goodTo", units == Units.METRIC ? "1" : "1/32\"");
        return new OpeningForm(Ids.next(), null, typed);
    }

    static OpeningForm of(UUID id, int version, OpeningDetails kept, Units units) {
        Map<String, String> typed = new TreeMap<>();
        UUID piece = kept.pieceId();
        typed.put("piece", piece == null ? "" : piece.toString());
        typed.put("place", kept.place());
        typed.put("goodTo", kept.goodTo().formatInBox(units));
        typed.put("measuredOn", kept.measuredOn().toString());
        typed.put("note", kept.note());
        kept.readings().forEach((reading, length) -> typed.put(reading.box(), length.formatInBox(units)));
        typed.put("studs", MarkLines.write(kept.marks(), Mark.Kind.STUD, units));
        typed.put("outlets", MarkLines.write(kept.marks(), Mark.Kind.OUTLET, units));
        typed.put("reveals", MarkLines.write(kept.marks(), Mark.Kind.REVEAL, units));
        return new OpeningForm(id, version, typed);
    }

    public String get(String name) {
        return typed.getOrDefault(name, "");
    }

    @Nullable
    OpeningDetails read(FormReader read, Units units) {
        var piece = read.optional("piece", get("piece"), () -> Reader.id(get("piece")));
        var place = read.field("place", () -> Typed.requiredLine(get("place"), 120));
        var on = read.field("measuredOn", () -> Reader.day(get("measuredOn")));
        Map<Reading, Length> readings = new EnumMap<>(Reading.class);
        for (Reading reading : Reading.values()) {
            Length length = read.optional(reading.box(), get(reading.box()), () -> length(reading, units));
            if (length != null) {
                readings.put(reading, length);
            }
        }
        ReadingRules.check(readings, read);
        List<Mark> marks = new ArrayList<>();
        marks(marks, "studs", Mark.Kind.STUD, read, units);
        marks(marks, "outlets", Mark.Kind.OUTLET, read, units);
        marks(marks, "reveals", Mark.Kind.REVEAL, read, units);
        var goodTo = read.field("goodTo", () -> goodTo(units));
        var note = read.field("note", () -> Typed.block(get("note"), 1000));
        return read.refused() || place == null || goodTo == null || on == null || note == null
                ? null
                : new OpeningDetails(piece, place, goodTo, on, note, readings, marks);
    }

    private Length length(Reading reading, Units units) {
        return reading.isSigned()
                ? Length.parseSigned(get(reading.box()), units)
                : Length.parseSize(get(reading.box()), units);
    }

    private Length goodTo(Units units) {
        Length goodTo = Length.parseSize(get("goodTo"), units);
        if (goodTo.compareTo(INCH) > 0) {
            throw new NotUnderstood("A reading that is good to more than an inch is a guess.");
        }
        return goodTo;
    }

    private void marks(List<Mark> marks, String box, Mark.Kind kind, FormReader read, Units units) {
        List<Mark> lines = read.field(box, () -> MarkLines.read(get(box), kind, units));
        if (lines != null) {
            marks.addAll(lines);
        }
    }

    /** Both versions, box by box, as far as either says something. */
    List<Stale.Row> beside(OpeningForm theirs, java.util.function.UnaryOperator<String> label) {
        List<Stale.Row> rows = new ArrayList<>();
        for (String box : boxes()) {
            if (!theirs.get(box).isEmpty() || !get(box).isEmpty()) {
                rows.add(new Stale.Row(label.apply(box), theirs.get(box), get(box)));
            }
        }
        return rows;
    }

    private static List<String> boxes() {
        List<String> boxes = new ArrayList<>(List.of("place", "measuredOn", "goodTo"));
        for (Reading reading : Reading.values()) {
            boxes.add(reading.box());
        }
        boxes.addAll(List.of("studs", "outlets", "reveals", "note"));
        return boxes;
    }
}
