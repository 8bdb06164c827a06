package org.tallywright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Contrast of every pair of tokens that meet on a page, in each scheme. Formula and limits: WCAG 2.2, definitions of
 * relative luminance and contrast ratio, criteria 1.4.3 (text 4.5) and 1.4.11 (edges and marks 3).
 */
class ContrastTest {
    private static final Pattern PIGMENT = Pattern.compile("--raw-([a-z-]+):\\s*#([0-9a-f]{3,6});");
    private static final List<String> GROUNDS = List.of("paper", "sheet");
    private static final List<String> TEXTS = List.of("ink", "pencil", "chalk", "chalk-deep", "ochre", "brick", "moss");
    private static final List<String> EDGES = List.of("edge", "ink", "chalk", "ochre", "brick", "moss");

    @ParameterizedTest
    @ValueSource(strings = {"light", "dark", "print"})
    void isEnoughInEveryScheme(String scheme) throws IOException {
        Map<String, double[]> pigments = pigments(scheme);
        var report = new ArrayList<String>();
        var tooWeak = new ArrayList<String>();
        for (String ground : GROUNDS) {
            TEXTS.forEach(text -> measure(pigments, text, ground, 4.5, report, tooWeak));
            EDGES.forEach(edge -> measure(pigments, edge, ground, 3, report, tooWeak));
        }
        for (String wash : List.of("chalk", "ochre", "brick", "moss")) {
            for (String text : List.of(wash, "ink", "pencil")) {
                measure(pigments, text, wash + "-wash", 4.5, report, tooWeak);
            }
        }
        measure(pigments, "chalk-deep", "chalk-wash", 4.5, report, tooWeak);
        measure(pigments, "ochre", "paper", 4.5, report, tooWeak);
        measure(pigments, "pencil", "hair", 4.5, report, tooWeak);
        Files.createDirectories(Path.of("target/look"));
        Files.write(Path.of("target/look/contrast-" + scheme + ".txt"), report);
        assertThat(tooWeak).isEmpty();
    }

    @Test
    void knowsTheLimitsOfTheFormula() {
        assertThat(ratio(rgb("000"), rgb("fff"))).isEqualTo(21);
        assertThat(ratio(rgb("777777"), rgb("ffffff"))).isBetween(4.47, 4.49);
    }

    private static void measure(
            Map<String, double[]> pigments,
            String front,
            String ground,
            double least,
            List<String> report,
            List<String> tooWeak) {
        double ratio = ratio(pigments.get(front), pigments.get(ground));
        String line = String.format(Locale.ROOT, "%5.2f (least %.1f) %s on %s", ratio, least, front, ground);
        report.add(line);
        if (ratio < least) {
            tooWeak.add(line);
        }
    }

    private static Map<String, double[]> pigments(String scheme) throws IOException {
        String all = Files.readString(Path.of("src/main/resources/static/css/tokens.css"));
        int dark = all.indexOf("prefers-color-scheme: dark");
        int print = all.indexOf("@media print");
        int forced = all.indexOf("forced-colors");
        String part = switch (scheme) {
            case "light" -> all.substring(0, dark);
            case "dark" -> all.substring(dark, print);
            default -> all.substring(print, forced);
        };
        var pigments = new HashMap<String, double[]>();
        PIGMENT.matcher(part).results().forEach(found -> pigments.put(found.group(1), rgb(found.group(2))));
        return pigments;
    }

    private static double[] rgb(String hex) {
        String full = hex.length() == 3 ? hex.replaceAll("(.)", "$1$1") : hex;
        double[] rgb = new double[3];
        for (int i = 0; i < 3; i++) {
            double channel = Integer.parseInt(full.substring(2 * i, 2 * i + 2), 16) / 255.0;
            rgb[i] = channel <= .04045 ? channel / 12.92 : Math.pow((channel + .055) / 1.055, 2.4);
        }
        return rgb;
    }

    private static double ratio(double[] one, double[] other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + .05) / (Math.min(a, b) + .05);
    }

    private static double luminance(double[] rgb) {
        return .2126 * rgb[0] + .7152 * rgb[1] + .0722 * rgb[2];
    }
}
