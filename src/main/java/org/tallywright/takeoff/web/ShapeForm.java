package org.tallywright.takeoff.web;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Percent;
import org.tallywright.shared.ReportedSize;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Typed;
import org.tallywright.shared.Units;
import org.tallywright.takeoff.MaterialShape;
import org.tallywright.web.FormReader;

/** How a material comes, as typed. */
record ShapeForm(
        @Nullable Integer version,
        String form,
        String thickness,
        String sheetLength,
        String sheetWidth,
        String barLengths,
        String shortest,
        String longest,
        String narrowest,
        String widest,
        String surfacing,
        String kerf,
        String trim,
        String edgeLoss,
        String roughLength,
        String roughWidth,
        String defects) {
    private static final int MOST_LENGTHS = 12;
    private static final Length MOST_KERF = Length.parse("1 in", Units.IMPERIAL);
    private static final Length MOST_TRIM = Length.parse("10 in", Units.IMPERIAL);

    ShapeForm {
        form = or(form);
        thickness = or(thickness);
        sheetLength = or(sheetLength);
        sheetWidth = or(sheetWidth);
        barLengths = or(barLengths);
        shortest = or(shortest);
        longest = or(longest);
        narrowest = or(narrowest);
        widest = or(widest);
        surfacing = or(surfacing);
        kerf = or(kerf);
        trim = or(trim);
        edgeLoss = or(edgeLoss);
        roughLength = or(roughLength);
        roughWidth = or(roughWidth);
        defects = or(defects);
    }

    private static String or(@Nullable String sent) {
        return sent == null ? "" : sent;
    }

    static ShapeForm blank(Units units) {
        String kerf = units == Units.METRIC ? "3.2" : "1/8\"";
        return new ShapeForm(null, "sheet", "", "", "", "", "", "", "", "", "", kerf, "0", "0", "0", "0", "0");
    }

    static ShapeForm of(MaterialShape shape, @Nullable Integer version, Units units) {
        return new ShapeForm(
                version,
                shape.form().name().toLowerCase(Locale.ROOT),
                some(shape.thickness(), units),
                some(shape.sheetLength(), units),
                some(shape.sheetWidth(), units),
                String.join(
                        "; ",
                        shape.barLengths().stream().map(l -> l.format(units)).toList()),
                some(shape.shortest(), units),
                some(shape.longest(), units),
                some(shape.narrowest(), units),
                some(shape.widest(), units),
                shape.surfacing(),
                shape.kerf().formatInBox(units),
                shape.trim().formatInBox(units),
                shape.edgeLoss().formatInBox(units),
                shape.roughLength().formatInBox(units),
                shape.roughWidth().formatInBox(units),
                shape.defectsPercent().stripTrailingZeros().toPlainString());
    }

    private static String some(Length length, Units units) {
        return length.isZero() ? "" : length.formatInBox(units);
    }

    /** What does not belong to the form chosen is not read. */
    @Nullable
    MaterialShape read(FormReader read, Units units) {
        MaterialShape.Form chosen = read.field("form", this::chosen);
        Length thick = read.field("thickness", () -> upTo(thick(units), MOST_TRIM));
        Length cut = read.field("kerf", () -> upTo(Length.parse(kerf, units), MOST_KERF));
        Length edges = read.field("trim", () -> upTo(Length.parse(trim, units), MOST_TRIM));
        if (chosen == null || thick == null || cut == null || edges == null) {
            return null;
        }
        boolean sheet = chosen == MaterialShape.Form.SHEET;
        boolean board = chosen == MaterialShape.Form.BOARD;
        Length longSide = size(read, "sheetLength", sheetLength, sheet, units);
        Length wide = size(read, "sheetWidth", sheetWidth, sheet, units);
        Length least = size(read, "shortest", shortest, board, units);
        Length most = size(read, "longest", longest, board, units);
        Length narrow = size(read, "narrowest", narrowest, board, units);
        Length broad = size(read, "widest", widest, board, units);
        Length edge = loss(read, "edgeLoss", edgeLoss, board, units);
        Length more = loss(read, "roughLength", roughLength, board, units);
        Length wider = loss(read, "roughWidth", roughWidth, board, units);
        String surface = read.field("surfacing", () -> Typed.line(surfacing, 20));
        BigDecimal lost = read.field("defects", () -> board ? share(defects) : BigDecimal.ZERO);
        List<Length> bars = read.field(
                "barLengths", () -> chosen == MaterialShape.Form.BAR ? lengths(barLengths, units) : List.<Length>of());
        if (read.refused() || surface == null || lost == null || bars == null) {
            return null;
        }
        return new MaterialShape(
                chosen, thick, longSide, wide, bars, least, most, narrow, broad, surface, cut, edges, edge, more, wider,
                lost);
    }

    /** A bar of those lengths, from a form that asks for nothing else. */
    static ShapeForm bar(String barLengths, String kerf, String trim) {
        return new ShapeForm(null, "bar", "", "", "", barLengths, "", "", "", "", "", kerf, trim, "", "", "", "");
    }

    /** A named size such as 8/4 or 2x4 is its rough thickness, in a metric shop too; else a length. A bar may have none. */
    private Length thick(Units units) {
        return form.equals("bar") && thickness.isBlank() ? Length.ZERO : thickened(units);
    }

    private Length thickened(Units units) {
        return named().map(ReportedSize::thickness).orElseGet(() -> Length.parseSize(thickness, units));
    }

    /** What was named, where the thickness is the name of a size. */
    Optional<ReportedSize> named() {
        return ReportedSize.find(thickness);
    }

    private MaterialShape.Form chosen() {
        return switch (form) {
            case "sheet" -> MaterialShape.Form.SHEET;
            case "bar" -> MaterialShape.Form.BAR;
            case "board" -> MaterialShape.Form.BOARD;
            default -> throw new NotUnderstood("Choose sheet, bar or board.");
        };
    }

    private static Length size(FormReader read, String field, String typed, boolean wanted, Units units) {
        Length length = wanted ? read.field(field, () -> Length.parseSize(typed, units)) : null;
        return length == null ? Length.ZERO : length;
    }

    private static Length loss(FormReader read, String field, String typed, boolean wanted, Units units) {
        Length length = wanted && !typed.isBlank()
                ? read.field(field, () -> upTo(Length.parse(typed, units), MOST_TRIM))
                : null;
        return length == null ? Length.ZERO : length;
    }

    private static Length upTo(Length length, Length most) {
        if (length.compareTo(most) > 0) {
            throw new NotUnderstood("This is more than " + most.formatInches() + "; check the unit.");
        }
        return length;
    }

    private static BigDecimal share(String typed) {
        BigDecimal percent =
                typed.isBlank() ? BigDecimal.ZERO : Percent.of(typed).amount();
        if (percent.compareTo(BigDecimal.valueOf(80)) > 0) {
            throw new NotUnderstood("Defects take at most 80 %.");
        }
        return percent;
    }

    private static List<Length> lengths(String typed, Units units) {
        List<Length> lengths = new ArrayList<>();
        for (String one : typed.split(";", -1)) {
            if (!one.isBlank()) {
                lengths.add(Length.parseSize(one, units));
            }
        }
        if (lengths.size() > MOST_LENGTHS) {
            throw new NotUnderstood("Write at most " + MOST_LENGTHS + " lengths.");
        }
        return lengths;
    }

    /** Both versions, for one whose save came too late. */
    List<Stale.Row> beside(ShapeForm theirs) {
        return List.of(
                new Stale.Row("Comes as", theirs.form, form),
                new Stale.Row("Thickness", theirs.thickness, thickness),
                new Stale.Row("Sheet length", theirs.sheetLength, sheetLength),
                new Stale.Row("Sheet width", theirs.sheetWidth, sheetWidth),
                new Stale.Row("Bar lengths", theirs.barLengths, barLengths),
                new Stale.Row("Shortest", theirs.shortest, shortest),
                new Stale.Row("Longest", theirs.longest, longest),
                new Stale.Row("Narrowest", theirs.narrowest, narrowest),
                new Stale.Row("Widest", theirs.widest, widest),
                new Stale.Row("Surfacing", theirs.surfacing, surfacing),
                new Stale.Row("Kerf", theirs.kerf, kerf),
                new Stale.Row("Trim", theirs.trim, trim),
                new Stale.Row("Edge loss", theirs.edgeLoss, edgeLoss),
                new Stale.Row("Added to the length", theirs.roughLength, roughLength),
                new Stale.Row("Added to the width", theirs.roughWidth, roughWidth),
                new Stale.Row("Defects", theirs.defects, defects));
    }
}
