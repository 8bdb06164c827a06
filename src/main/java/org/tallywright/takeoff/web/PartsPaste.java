package org.tallywright.takeoff.web;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Problem;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;
import org.tallywright.shared.Units;
import org.tallywright.takeoff.PartDetails;
import org.tallywright.takeoff.RecipeError;

/**
 * A pasted list of parts: a heading line, then one part a line, columns by tab, comma or semicolon. Headings may stand in
 * any order; name, quantity, length and width are needed.
 */
record PartsPaste(List<PartDetails> parts, List<RecipeError> errors) {
    static final int MOST_CHARACTERS = 100_000;
    private static final int MOST_LINES = 500;
    private static final Map<String, String> HEADINGS = headings();

    private static Map<String, String> headings() {
        Map<String, String> words = new LinkedHashMap<>();
        Map.of(
                        "name", "name part",
                        "quantity", "quantity qty count number pieces",
                        "length", "length long",
                        "width", "width wide",
                        "material", "material",
                        "grain", "grain",
                        "match", "match matched",
                        "long edges", "longedges",
                        "short edges", "shortedges",
                        "faces", "faces")
                .forEach((column, all) -> {
                    for (String word : all.split(" ")) {
                        words.put(word, column);
                    }
                });
        words.put("joints", "joints");
        return Map.copyOf(words);
    }

    /**
     * @param materials id by name in small letters
     * @throws Refused where it is no list at all
     */
    static PartsPaste read(String text, Units units, Map<String, UUID> materials) {
        if (text.isBlank()) {
            throw new Refused("text", "Paste a list: a heading line, then one part a line.");
        }
        if (text.length() > MOST_CHARACTERS) {
            throw new Refused("text", "Paste at most 100,000 characters at once.");
        }
        List<CSVRecord> lines = lines(text);
        Map<String, Integer> columns = columns(lines.get(0));
        if (lines.size() > MOST_LINES + 1) {
            throw new Refused(
                    "text",
                    "There are " + (lines.size() - 1) + " lines; paste at most " + MOST_LINES
                            + " at once, and put parts that are alike into one line.");
        }
        List<PartDetails> parts = new ArrayList<>();
        List<RecipeError> errors = new ArrayList<>();
        for (CSVRecord line : lines.subList(1, lines.size())) {
            int before = errors.size();
            Line read = new Line(line, columns, errors);
            PartDetails part = part(read, units, materials);
            if (errors.size() == before && part != null) {
                parts.add(part);
            }
        }
        return new PartsPaste(parts, errors);
    }

    private static List<CSVRecord> lines(String text) {
        String first = text.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
        char between = first.indexOf('\t') >= 0 ? '\t' : first.indexOf(';') >= 0 ? ';' : ',';
        CSVFormat.Builder format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(between)
                .setIgnoreEmptyLines(true)
                .setTrim(true);
        // An inch mark in a tabbed list is an inch mark, not the start of a quoted text.
        CSVFormat chosen = between == '\t'
                ? format.setQuote(null).get()
                : format.setLenientEof(true).setTrailingData(true).get();
        try (CSVParser parser = chosen.parse(new StringReader(text))) {
            return parser.getRecords();
        } catch (IOException | UncheckedIOException | IllegalStateException e) {
            throw new Refused(
                    "text", "The quotation marks do not pair up; paste it with tabs, or write 3/4 in for 3/4\".");
        }
    }

    private static Map<String, Integer> columns(CSVRecord heading) {
        Map<String, Integer> columns = new LinkedHashMap<>();
        for (int i = 0; i < heading.size(); i++) {
            String column = HEADINGS.get(heading.get(i).toLowerCase(Locale.ROOT).replaceAll("[^a-z]", ""));
            if (column != null) {
                columns.putIfAbsent(column, i);
            }
        }
        for (String needed : List.of("name", "quantity", "length", "width")) {
            if (!columns.containsKey(needed)) {
                throw new Refused("text", "The heading line has no column \"" + needed + "\".");
            }
        }
        return columns;
    }

    private static @org.jspecify.annotations.Nullable PartDetails part(
            Line line, Units units, Map<String, UUID> materials) {
        String name = line.read("name", typed -> Typed.requiredLine(typed, 120));
        Integer quantity = line.read("quantity", typed -> PartForm.count(typed, 1, 9_999));
        Length length = line.read("length", typed -> Length.parseSize(typed, units));
        Length width = line.read("width", typed -> Length.parseSize(typed, units));
        var grain = line.read("grain", PartForm::grain);
        String matched = line.read("match", typed -> Typed.line(typed, 20));
        Integer longEdges = line.read("long edges", typed -> PartForm.count(typed, 0, 2));
        Integer shortEdges = line.read("short edges", typed -> PartForm.count(typed, 0, 2));
        Integer faces = line.read("faces", typed -> PartForm.count(typed, 0, 2));
        Integer joints = line.read("joints", typed -> PartForm.count(typed, 0, 99));
        UUID material =
                line.text("material").isEmpty() ? null : line.read("material", typed -> material(typed, materials));
        if (name == null
                || quantity == null
                || length == null
                || width == null
                || grain == null
                || matched == null
                || longEdges == null
                || shortEdges == null
                || faces == null
                || joints == null) {
            return null;
        }
        return new PartDetails(
                name, quantity, length, width, material, "", grain, matched, longEdges, shortEdges, faces, joints);
    }

    private static UUID material(String typed, Map<String, UUID> materials) {
        UUID found = materials.get(typed.toLowerCase(Locale.ROOT));
        if (found == null) {
            throw new NotUnderstood("\"" + (typed.length() > 60 ? typed.substring(0, 60) + "..." : typed)
                    + "\" is no name or code of a material of the catalogue.");
        }
        return found;
    }

    private record Line(CSVRecord cells, Map<String, Integer> columns, List<RecipeError> errors) {
        String text(String column) {
            Integer at = columns.get(column);
            return at == null || at >= cells.size() ? "" : cells.get(at);
        }

        <T> @org.jspecify.annotations.Nullable T read(String column, Function<String, T> value) {
            try {
                return value.apply(text(column));
            } catch (Problem problem) {
                errors.add(new RecipeError((int) cells.getRecordNumber(), column, problem.sentence()));
                return null;
            }
        }
    }
}
