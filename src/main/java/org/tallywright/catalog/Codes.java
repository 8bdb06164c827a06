package org.tallywright.catalog;

import java.text.Normalizer;
import java.util.Locale;
import java.util.function.Predicate;

/** Short codes for what a shop adds to its catalogue, made once from the first name and never changed. */
final class Codes {
    private static final int LONGEST = 50;

    private Codes() {}

    static String from(String name, Predicate<String> taken) {
        String plain = Normalizer.normalize(name, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT);
        String stem = plain.replaceAll("[^a-z0-9]+", "_").replaceAll("^_|_$", "");
        stem = stem.isEmpty() ? "own" : stem.substring(0, Math.min(LONGEST, stem.length()));
        String code = stem;
        for (int n = 2; taken.test(code); n++) {
            code = stem + "_" + n;
        }
        return code;
    }
}
