package org.tallywright.takeoff;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/** The formulas that come along, by the name of the kind of piece. Common practice, no source. */
final class ShippedRecipes {
    private static final String HAND = text("hand.txt");
    private static final Map<String, String> BY_KIND = byKind();

    private ShippedRecipes() {}

    /** The formulas of that kind, or those for parts listed by hand. */
    static String of(String kind) {
        return BY_KIND.getOrDefault(kind.toLowerCase(Locale.ROOT), HAND);
    }

    private static Map<String, String> byKind() {
        Map<String, String> byKind = new HashMap<>();
        text("index.csv").lines().skip(1).forEach(line -> {
            String[] columns = line.split(",", 2);
            byKind.put(columns[0].toLowerCase(Locale.ROOT), text(columns[1] + ".txt"));
        });
        return Map.copyOf(byKind);
    }

    private static String text(String file) {
        String path = "/db/catalog/recipes/" + file;
        try (InputStream in = Objects.requireNonNull(ShippedRecipes.class.getResourceAsStream(path), path)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + path, e);
        }
    }
}
