package org.tallywright.daylog.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.tallywright.Draw;
import org.tallywright.Tries;
import org.tallywright.daylog.Place;
import org.tallywright.daylog.Target;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Ids;

/**
 * Lines made from the grammar that the page states, with words in any order and a slip of the thumb here and there. What a
 * part means is found, or asked; it is never taken for something else.
 */
class LineGrammarPropertiesTest {
    private static final List<Place> TASKS = List.of(
            task("Edge-glue panel", "26-014", "Window seat"),
            task("Finish sand", "26-014", "Window seat"),
            task("Hang doors", "26-011", "Pantry bookcase"),
            task("Scribe filler", "26-011", "Pantry bookcase"),
            task("Install crown", "26-009", "Study shelving"),
            task("Varnish drawers", "26-009", "Study shelving"));
    private static final LineReader READER = new LineReader(
            TASKS.subList(0, 3),
            TASKS.subList(3, 6),
            () -> Map.of("Finish sand", "Finish sand", "Stain or dye", "Stain or dye"));

    private record Part(String text, Place place, int minutes, boolean rework) {}

    private int found;
    private int all;

    @Test
    void findsOrAsksButNeverTakesOneForAnother() {
        Tries.of(600, draw -> {
            List<Part> parts = draw.list(1, 6, () -> part(draw));
            String line = String.join(
                    draw.of(", ", "; ", ",  ", "\n"),
                    parts.stream().map(Part::text).toList());
            List<LineReader.Heard> heard = READER.read(line);
            assertThat(heard).as(line).hasSameSizeAs(parts);
            for (int n = 0; n < parts.size(); n++) {
                check(parts.get(n), heard.get(n), line);
            }
        });
        assertThat(found).as("found of %d", all).isGreaterThan(all * 95 / 100);
    }

    private void check(Part part, LineReader.Heard heard, String line) {
        all++;
        assertThat(heard.problem()).as(line).isNull();
        assertThat(Hours.parse(heard.time()).minutes()).as(line).isEqualTo(part.minutes());
        assertThat(heard.hourClass()).as(line).isEqualTo(part.rework() ? HourClass.REWORK : HourClass.DIRECT);
        if (heard.place() == null) {
            assertThat(heard.ask()).as(line).isNotBlank();
        } else {
            assertThat(heard.place()).as(line).isEqualTo(part.place());
            found++;
        }
    }

    private static Part part(Draw draw) {
        Place place = draw.of(TASKS);
        List<String> words = new ArrayList<>(Arrays.asList(place.name().split("[ -]")));
        if (draw.coin()) {
            words.add(place.jobTitle().split(" ")[0]);
        }
        Collections.shuffle(words, new Random(draw.between(0, 1_000_000)));
        if (draw.coin()) {
            int n = draw.between(0, words.size() - 1);
            words.set(n, slip(words.get(n), draw));
        }
        String said = String.join(" ", words);
        said = draw.coin() ? said.toLowerCase(java.util.Locale.ROOT) : said;
        boolean rework = draw.coin();
        int minutes = draw.between(1, 32) * 15;
        String time = time(minutes, draw);
        if (rework) {
            said = draw.coin() ? "rework " + said : said + " rework";
        }
        return new Part(draw.coin() ? said + " " + time : time + " " + said, place, minutes, rework);
    }

    /** One letter of a longer word doubled, left out or swapped with the next, never the first. */
    private static String slip(String word, Draw draw) {
        if (word.length() < 6) {
            return word;
        }
        int at = draw.between(1, word.length() - 3);
        return switch (draw.between(0, 2)) {
            case 0 -> word.substring(0, at) + word.charAt(at) + word.substring(at);
            case 1 -> word.substring(0, at) + word.substring(at + 1);
            default -> word.substring(0, at) + word.charAt(at + 1) + word.charAt(at) + word.substring(at + 2);
        };
    }

    private static String time(int minutes, Draw draw) {
        int hours = minutes / 60;
        int rest = minutes % 60;
        String decimal = new java.math.BigDecimal(minutes)
                .divide(new java.math.BigDecimal(60))
                .toPlainString();
        return draw.of(
                hours + "h" + (rest == 0 ? "" : String.format("%02d", rest)),
                hours + ":" + String.format("%02d", rest),
                minutes + "m",
                minutes + " min",
                decimal + "h",
                decimal.replace('.', ',') + "h");
    }

    private static Place task(String name, String number, String job) {
        return new Place(
                Target.task(Ids.next()),
                Ids.next(),
                number,
                job,
                "running",
                name,
                "Build",
                HourClass.DIRECT,
                false,
                null,
                null,
                false);
    }
}
