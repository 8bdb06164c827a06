package org.tallywright.materials;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Slips;
import org.tallywright.shared.Unit;

/**
 * Material in one line, as people say it: {@code 2 sheets birch ply, 11 bf red oak 5/4}. Parts are separated by commas with
 * a space, semicolons, new lines or "and"; each has a quantity with its unit, before or behind the words of the material, in
 * any order. What fits more than one material, or none, is asked; nothing is guessed.
 */
public final class UsedLine {
    private static final int MOST_PARTS = 40;
    private static final int MOST_PERHAPS = 12;
    private static final Pattern PARTS = Pattern.compile("[;\\n+]|,(?!\\d)|(?<!\\d),|\\band\\b(?= *\\d)");
    private static final String NUMBER = "\\d+[ -]\\d+/\\d+|\\d+/\\d+|\\d+[.,]\\d+|\\d+|\\.\\d+";
    private static final Pattern MEASURED =
            Pattern.compile("(?<![\\w/.,])(" + NUMBER + ") ?([a-z]+[23]?\\.?(?: ?(?:ft|feet|foot)\\b)?)");
    private static final Pattern BARE = Pattern.compile("^(" + NUMBER + ")(?= )");
    private static final Map<String, String> SPOKEN = Map.of(
            "half a ",
            "1/2 ",
            "half ",
            "1/2 ",
            "quarter ",
            "1/4 ",
            "one ",
            "1 ",
            "two ",
            "2 ",
            "three ",
            "3 ",
            "four ",
            "4 ",
            "a ",
            "1 ",
            "an ",
            "1 ");
    private static final Map<String, Unit> SAID = said();
    private static final Set<String> NOISE = Set.of("of", "the", "some", "in", "inch", "inches", "from", "for");

    private final List<MaterialCard> catalog;

    public UsedLine(List<MaterialCard> catalog) {
        this.catalog = List.copyOf(catalog);
    }

    /**
     * One part of the line.
     *
     * @param quantity in the unit of the material, or as typed while no material is chosen; null where there is none
     * @param material what is meant, or null while that is to be asked
     * @param perhaps what may be meant
     * @param ask what is not plain, as a sentence; null where all is
     */
    public record Heard(
            String typed,
            @Nullable Quantity quantity,
            @Nullable MaterialCard material,
            List<MaterialCard> perhaps,
            @Nullable String ask) {}

    private static Map<String, Unit> said() {
        Map<String, Unit> said = new TreeMap<>();
        words(said, Unit.SHEET, "sheet sheets sht shts");
        words(said, Unit.BF, "bf bdft boardfeet boardfoot boardft bdfeet");
        words(said, Unit.SF, "sf sqft sqfeet squarefeet squarefoot squareft ft2");
        words(said, Unit.LF, "lf ft foot feet linft linfeet linearfeet linearfoot linearft runningft runningfeet");
        words(said, Unit.EACH, "each ea pc pcs piece pieces");
        words(said, Unit.PANEL, "panel panels");
        words(said, Unit.LM, "lm m metre metres meter meters");
        words(said, Unit.M2, "m2 sqm");
        words(said, Unit.M3, "m3");
        return said;
    }

    private static void words(Map<String, Unit> said, Unit unit, String spellings) {
        Stream.of(spellings.split(" ")).forEach(word -> said.put(word, unit));
    }

    public List<Heard> read(String line) {
        List<Heard> heard = new ArrayList<>();
        for (String part : PARTS.split(tidy(line))) {
            if (!part.isBlank() && heard.size() < MOST_PARTS) {
                heard.add(part(part.strip()));
            }
        }
        return heard;
    }

    /** Fractions written with one sign become those with a stroke; the rest is only made small and even. */
    static String tidy(String line) {
        String apart = line.replaceAll("(\\d)([\\u00bc-\\u00be\\u2150-\\u215e])", "$1 $2");
        return Normalizer.normalize(apart, Normalizer.Form.NFKC)
                .replace('\u2044', '/')
                .replaceAll("[\\u2010-\\u2015\\u2212]", "-")
                .replaceAll("[^\\S\\n]+", " ")
                .toLowerCase(Locale.ROOT);
    }

    private Heard part(String typed) {
        String text = spoken(typed);
        List<Measure> measures = measures(text);
        if (measures.size() > 1) {
            return new Heard(
                    typed, null, null, List.of(), "Two quantities stand here; put a comma between two materials.");
        }
        if (measures.size() == 1) {
            return resolve(typed, measures.get(0));
        }
        Matcher bare = BARE.matcher(text);
        if (!bare.find()) {
            return new Heard(
                    typed, null, null, perhaps(words(text)), "How much of it? Write it like 2 sheets or 11 bf.");
        }
        Quantity quantity = number(bare.group(1));
        if (quantity == null && bare.group(1).contains(" ")) {
            // "2 5/4 oak": two of something thick, not three and a quarter.
            int space = bare.group(1).indexOf(' ');
            return resolve(typed, new Measure(number(bare.group(1).substring(0, space)), null, text.substring(space)));
        }
        return resolve(typed, new Measure(quantity, null, text.substring(bare.end())));
    }

    private static String spoken(String text) {
        for (String word : SPOKEN.keySet().stream()
                .sorted(Comparator.comparing(String::length).reversed())
                .toList()) {
            if (text.startsWith(word)) {
                return SPOKEN.get(word) + text.substring(word.length());
            }
        }
        return text;
    }

    /** @param unit as said, or null where none was */
    private record Measure(
            @Nullable Quantity quantity, @Nullable String unit, String rest) {}

    private List<Measure> measures(String text) {
        List<Measure> found = new ArrayList<>();
        Matcher pair = MEASURED.matcher(text);
        int from = 0;
        while (pair.find(from)) {
            String unit = unit(pair.group(2));
            int end = pair.end();
            if (unit == null && pair.group(2).contains(" ")) {
                unit = unit(pair.group(2).substring(0, pair.group(2).indexOf(' ')));
                end = pair.start(2) + pair.group(2).indexOf(' ');
            }
            if (unit != null) {
                found.add(new Measure(
                        number(pair.group(1)), unit, text.substring(0, pair.start()) + " " + text.substring(end)));
            }
            from = unit != null ? end : pair.end(1);
        }
        return found;
    }

    private static @Nullable Quantity number(String typed) {
        Matcher mixed = Pattern.compile("(\\d+)[ -](\\d+)/(\\d+)").matcher(typed);
        if (mixed.matches()
                && (mixed.group(2).length() > 6
                        || mixed.group(3).length() > 6
                        || Integer.parseInt(mixed.group(2)) >= Integer.parseInt(mixed.group(3)))) {
            return null;
        }
        try {
            return Quantity.of(typed.replaceAll("^(\\d+)-", "$1 "));
        } catch (NotUnderstood no) {
            return null;
        }
    }

    /** The code of a unit of the trade, or the catalogue's own word for how a material is kept. */
    private @Nullable String unit(String word) {
        String plain = word.replaceAll("[ .]", "");
        Unit known = SAID.get(plain);
        if (known != null) {
            return known.code();
        }
        for (MaterialCard card : catalog) {
            String own = card.unit().toLowerCase(Locale.ROOT);
            if (plain.equals(own) || plain.equals(own + "s")) {
                return own;
            }
        }
        return Stream.of("sheet", "sheets", "piece", "pieces")
                .filter(meant -> Slips.oneOf(meant, plain))
                .map(SAID::get)
                .filter(Objects::nonNull)
                .map(Unit::code)
                .findFirst()
                .orElse(null);
    }

    private Heard resolve(String typed, Measure measure) {
        List<String> words = words(measure.rest());
        if (measure.quantity() == null) {
            return new Heard(
                    typed, null, null, perhaps(words), "This quantity is not plain; write it like 2, 2.5 or 2 1/2.");
        }
        Quantity quantity = measure.quantity();
        List<MaterialCard> named = words.isEmpty() ? List.of() : named(words);
        List<MaterialCard> fitting =
                named.stream().filter(card -> fits(measure.unit(), card)).toList();
        if (named.isEmpty()) {
            return new Heard(typed, quantity, null, perhaps(words), "Which material is it?");
        }
        if (fitting.isEmpty()) {
            String unit = named.get(0).unit();
            String sentence = measure.unit() == null
                    ? "How many " + unit + "? Say the unit too."
                    : named.get(0).name() + " is kept by the " + unit + "; say it so.";
            return new Heard(typed, null, null, some(named), sentence);
        }
        List<MaterialCard> best = best(fitting, words);
        if (best.size() > 1) {
            return new Heard(typed, quantity, null, some(best), "More than one material is called so. Which?");
        }
        MaterialCard card = best.get(0);
        return new Heard(typed, convert(quantity, measure.unit(), card), card, List.of(card), null);
    }

    private static List<MaterialCard> some(List<MaterialCard> cards) {
        return cards.stream().limit(MOST_PERHAPS).toList();
    }

    /** Without a unit only what is counted one by one can be meant. */
    private static boolean fits(@Nullable String said, MaterialCard card) {
        String own = card.unit().toLowerCase(Locale.ROOT);
        if (said == null) {
            return own.equals("each") || own.equals("sheet") || own.equals("panel");
        }
        return own.equals(said) || counterpart(said, own);
    }

    private static boolean counterpart(String said, String own) {
        try {
            return Unit.of(said).isMeasured() && Unit.of(said).counterpart() == Unit.of(own);
        } catch (NotUnderstood | Refused word) {
            return false;
        }
    }

    private static Quantity convert(Quantity quantity, @Nullable String said, MaterialCard card) {
        return said != null && counterpart(said, card.unit().toLowerCase(Locale.ROOT))
                ? quantity.convert(Unit.of(said), Unit.of(card.unit()))
                : quantity;
    }

    private static List<String> words(String text) {
        return Stream.of(text.split("[^\\p{L}\\d/]+"))
                .filter(word -> !word.isEmpty() && !NOISE.contains(word))
                .toList();
    }

    private List<MaterialCard> named(List<String> words) {
        return catalog.stream()
                .filter(card -> words.stream().allMatch(word -> level(word, card) < 3))
                .toList();
    }

    /** Those that hold every word as typed, before those that only begin so or are a slip away. */
    private static List<MaterialCard> best(List<MaterialCard> cards, List<String> words) {
        Map<Integer, List<MaterialCard>> byLevel = cards.stream()
                .collect(Collectors.groupingBy(
                        card -> words.stream()
                                .mapToInt(word -> level(word, card))
                                .max()
                                .orElse(0),
                        TreeMap::new,
                        Collectors.toList()));
        return byLevel.values().iterator().next();
    }

    /** 0 as it is, 1 as its beginning, 2 with a slip, 3 not at all. */
    private static int level(String word, MaterialCard card) {
        int level = 3;
        for (String own : words(tidy(card.name()))) {
            if (own.equals(word) || own.equals(word + "s") || word.equals(own + "s")) {
                return 0;
            }
            if (word.length() >= 3 && own.startsWith(word)) {
                level = Math.min(level, 1);
            } else if (Slips.oneOf(own, word)) {
                level = Math.min(level, 2);
            }
        }
        return level;
    }

    /** What shares the most words. */
    private List<MaterialCard> perhaps(List<String> words) {
        return catalog.stream()
                .filter(card -> shared(words, card) > 0)
                .sorted(Comparator.comparing((MaterialCard card) -> -shared(words, card)))
                .limit(MOST_PERHAPS)
                .toList();
    }

    private static long shared(List<String> words, MaterialCard card) {
        return words.stream().filter(word -> level(word, card) < 3).count();
    }
}
