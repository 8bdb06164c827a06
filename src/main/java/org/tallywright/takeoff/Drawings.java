package org.tallywright.takeoff;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.tallywright.cutting.BarPlan;
import org.tallywright.cutting.Grain;
import org.tallywright.cutting.Region;
import org.tallywright.cutting.SheetPlan;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;

/** Draws layouts: a sheet lies on its length, bars lie below one another; alike ones are drawn once. */
final class Drawings {
    static final long ACROSS = 960;
    /** An upright offcut is drawn no higher than this, so that it stays on one page. */
    private static final double HIGHEST = 640;

    private static final long BAR_HIGH = 56;

    private final Units units;

    Drawings(Units units) {
        this.units = units;
    }

    /** @param rows the row of each single part asked for */
    List<Drawing> sheets(SheetPlan plan, List<PartRows.Row> rows, int fromStock, long kerf, long trim) {
        Map<Drawing, Integer> alike = new LinkedHashMap<>();
        int whole = 0;
        for (SheetPlan.Sheet sheet : plan.sheets()) {
            String what = sheet.isOwned() ? "offcut" : whole++ < fromStock ? "from stock" : "to buy";
            alike.merge(sheet(sheet, rows, what, kerf, trim), 1, Integer::sum);
        }
        return numbered(alike, "Sheet");
    }

    /** Numbered through, so that a drawing on the bench can be told from the next; alike ones carry all their numbers. */
    private static List<Drawing> numbered(Map<Drawing, Integer> alike, String what) {
        List<Drawing> drawings = new ArrayList<>();
        int next = 1;
        for (Map.Entry<Drawing, Integer> one : alike.entrySet()) {
            int last = next + one.getValue() - 1;
            String numbers = next == last ? what + " " + next : what + "s " + next + " to " + last;
            drawings.add(one.getKey().numbered(numbers + ": " + one.getKey().title(), one.getValue()));
            next = last + 1;
        }
        return drawings;
    }

    private Drawing sheet(SheetPlan.Sheet sheet, List<PartRows.Row> rows, String what, long kerf, long trim) {
        long length = sheet.stock().length();
        double scale =
                Math.min((double) ACROSS / length, HIGHEST / sheet.stock().width());
        List<Drawing.Box> boxes = new ArrayList<>();
        Map<String, Integer> parts = new LinkedHashMap<>();
        for (Region.Part part : sheet.parts()) {
            PartRows.Row row = rows.get(part.part());
            boxes.add(box(part, scale, String.valueOf(row.number()), size(part)));
            parts.merge(words(row), 1, Integer::sum);
        }
        Map<String, Integer> left = new LinkedHashMap<>();
        for (Region.Left rest : sheet.left()) {
            boxes.add(box(rest, scale, "", size(rest)));
            left.merge(size(rest), 1, Integer::sum);
        }
        List<Drawing.Saw> saws =
                sheet.cuts().stream().map(cut -> saw(cut, scale)).toList();
        boolean grain = sheet.parts().stream()
                .anyMatch(part -> rows.get(part.part()).details().grain() != Grain.ANY);
        List<String> facts = new ArrayList<>(List.of(kerf(kerf), trim(trim, "each edge")));
        if (grain) {
            facts.add("grain along the " + length(length));
        }
        return new Drawing(
                size(length, sheet.stock().width()) + ", " + what,
                1,
                Math.max(8, Math.round(length * scale)),
                Math.max(8, Math.round(sheet.stock().width() * scale)),
                boxes,
                saws,
                List.copyOf(facts),
                cuts(sheet),
                counted(parts),
                counted(left),
                grain);
    }

    private List<String> cuts(SheetPlan.Sheet sheet) {
        List<String> words = new ArrayList<>();
        boolean trimmed = sheet.whole().x() > 0;
        if (trimmed) {
            words.add("Trim every edge by " + length(sheet.whole().x()) + ".");
        }
        for (Region.Cut cut : sheet.cuts()) {
            long at = cut.at() - (cut.rip() ? cut.y() : cut.x());
            words.add((cut.rip() ? "Rip " : "Crosscut ") + "the " + size(cut) + " piece at " + length(at) + ".");
        }
        return words;
    }

    private static Drawing.Box box(Region region, double scale, String label, String size) {
        return new Drawing.Box(
                Math.round(region.x() * scale),
                Math.round(region.y() * scale),
                Math.max(1, Math.round(region.length() * scale)),
                Math.max(1, Math.round(region.width() * scale)),
                label,
                size,
                !label.isEmpty());
    }

    private static Drawing.Saw saw(Region.Cut cut, double scale) {
        long at = Math.round(cut.at() * scale);
        long x = Math.round(cut.x() * scale);
        long y = Math.round(cut.y() * scale);
        return cut.rip()
                ? new Drawing.Saw(x, at, Math.round((cut.x() + cut.length()) * scale), at)
                : new Drawing.Saw(at, y, at, Math.round((cut.y() + cut.width()) * scale));
    }

    List<Drawing> bars(
            BarPlan plan, List<PartRows.Row> rows, List<Long> lengths, List<Boolean> owned, long kerf, long trim) {
        Map<Drawing, Integer> alike = new LinkedHashMap<>();
        for (BarPlan.Bar bar : plan.bars()) {
            long length = lengths.get(bar.stock());
            String what = owned.get(bar.stock()) ? "offcut" : "to buy";
            alike.merge(bar(bar, rows, length, what, kerf, trim), 1, Integer::sum);
        }
        return numbered(alike, "Length");
    }

    private Drawing bar(BarPlan.Bar bar, List<PartRows.Row> rows, long length, String what, long kerf, long trim) {
        double scale = (double) ACROSS / length;
        List<Drawing.Box> boxes = new ArrayList<>();
        List<Drawing.Saw> saws = new ArrayList<>();
        List<String> cuts = new ArrayList<>();
        Map<String, Integer> parts = new LinkedHashMap<>();
        long at = trim;
        if (trim > 0) {
            cuts.add("Trim the end by " + length(trim) + ".");
        }
        for (int part : bar.parts()) {
            PartRows.Row row = rows.get(part);
            long size = row.details().length().units();
            boxes.add(new Drawing.Box(
                    Math.round(at * scale),
                    0,
                    Math.max(1, Math.round(size * scale)),
                    BAR_HIGH,
                    String.valueOf(row.number()),
                    length(size),
                    true));
            at += size;
            saws.add(new Drawing.Saw(Math.round(at * scale), 0, Math.round(at * scale), BAR_HIGH));
            cuts.add("Cut " + length(size) + " for part " + row.number() + ".");
            parts.merge(words(row), 1, Integer::sum);
            at += kerf;
        }
        List<String> left = new ArrayList<>();
        if (bar.left() > 0) {
            boxes.add(new Drawing.Box(
                    Math.round(at * scale),
                    0,
                    Math.max(1, Math.round(bar.left() * scale)),
                    BAR_HIGH,
                    "",
                    length(bar.left()),
                    false));
            left.add(length(bar.left()));
        }
        return new Drawing(
                length(length) + ", " + what,
                1,
                ACROSS,
                BAR_HIGH,
                boxes,
                saws,
                List.of(kerf(kerf), trim(trim, "each end")),
                cuts,
                counted(parts),
                left,
                false);
    }

    private String kerf(long kerf) {
        return kerf == 0 ? "no kerf" : "kerf " + length(kerf);
    }

    private String trim(long trim, String where) {
        return trim == 0 ? "no trim" : "trim " + length(trim) + " off " + where;
    }

    private String words(PartRows.Row row) {
        PartDetails part = row.details();
        return row.number() + " " + part.name() + ", " + row.pieceName() + ": "
                + size(part.length().units(), part.width().units());
    }

    private static List<String> counted(Map<String, Integer> parts) {
        return parts.entrySet().stream()
                .map(e -> e.getValue() == 1 ? e.getKey() : e.getKey() + " (" + e.getValue() + ")")
                .toList();
    }

    private String size(Region region) {
        return size(region.length(), region.width());
    }

    String size(long length, long width) {
        return length(length) + " x " + length(width);
    }

    String length(long length) {
        Length size = new Length(length);
        return units == Units.METRIC ? size.format(units) : size.formatInches();
    }
}
