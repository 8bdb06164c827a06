package org.tallywright.estimates.print;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** The one font of the paper, and how wide words come out in it. Latin, Greek and Cyrillic; nothing written from the right. */
final class Ink {
    private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    private final PDType0Font font;
    private final Map<Integer, Boolean> known = new HashMap<>();
    private final Set<Integer> missing = new TreeSet<>();

    Ink(PDDocument document) {
        try (InputStream file = PDDocument.class.getResourceAsStream(FONT)) {
            if (file == null) {
                throw new IllegalStateException(FONT);
            }
            font = PDType0Font.load(document, file, true);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    PDType0Font font() {
        return font;
    }

    /** @throws Unprintable where any text so far had a sign that the font has not */
    void guard() {
        if (!missing.isEmpty()) {
            throw new Unprintable(missing);
        }
    }

    /** One line of signs that the font has; signs that show nothing become a space or go. */
    String clean(String text) {
        StringBuilder clean = new StringBuilder();
        Normalizer.normalize(text, Normalizer.Form.NFC).codePoints().forEach(sign -> {
            if (Character.isWhitespace(sign) || Character.isSpaceChar(sign) || Character.isISOControl(sign)) {
                clean.append(isFixedSpace(sign) ? '\u00a0' : ' ');
            } else if (Character.getType(sign) != Character.FORMAT) {
                if (isKnown(sign)) {
                    clean.appendCodePoint(sign);
                } else {
                    missing.add(sign);
                }
            }
        });
        return clean.toString();
    }

    /** Between figure and currency, where a line must not break. */
    private static boolean isFixedSpace(int sign) {
        return sign == 0x00a0 || sign == 0x202f;
    }

    private boolean isKnown(int sign) {
        return known.computeIfAbsent(sign, s -> isFromTheLeft(s) && hasGlyph(s));
    }

    private static boolean isFromTheLeft(int sign) {
        byte way = Character.getDirectionality(sign);
        return way != Character.DIRECTIONALITY_RIGHT_TO_LEFT && way != Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC;
    }

    private boolean hasGlyph(int sign) {
        try {
            font.encode(Character.toString(sign));
            return true;
        } catch (IllegalArgumentException none) {
            return false;
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    float width(String clean, float size) {
        try {
            return font.getStringWidth(clean) / 1000 * size;
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    /** Lines that fit; a word wider than the column is broken where it must be. At least one line. */
    List<String> wrap(String text, float size, float column) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : clean(text).strip().split(" +")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (width(longer, size) <= column) {
                line = longer;
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line);
            }
            line = word;
            while (width(line, size) > column) {
                int cut = fitting(line, size, column);
                lines.add(line.substring(0, cut));
                line = line.substring(cut);
            }
        }
        lines.add(line);
        return lines;
    }

    private int fitting(String word, float size, float column) {
        int cut = word.offsetByCodePoints(0, 1);
        while (cut < word.length()) {
            int next = word.offsetByCodePoints(cut, 1);
            if (width(word.substring(0, next), size) > column) {
                return cut;
            }
            cut = next;
        }
        return cut;
    }
}
