package org.tallywright.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * What no page uses any more: words, fragments of templates, classes of the style sheets. A name that is put together
 * ({@code "costing.cause." + cause}) uses all that begin so. Found in the sources as text, so a name in a comment counts as used.
 */
class UnusedTest {
    private static final Path RESOURCES = Path.of("src/main/resources");
    private static final Pattern KEY = Pattern.compile("(?m)^([\\w.-]+)=");
    private static final Pattern DOTTED = Pattern.compile("[\\w-]+(?:\\.[\\w-]+)+");
    private static final Pattern STEM =
            Pattern.compile("([a-z][\\w-]*\\.(?:[\\w-]+\\.)+)(?:\\$\\{|[\"']\\s*\\+|[\"']\\))");
    private static final Pattern SHORT_STEM = Pattern.compile("[\"'|{]([a-z]+\\.)(?:\\$\\{|[\"']\\s*\\+)");
    private static final Pattern FRAGMENT = Pattern.compile("th:fragment=\"([\\w-]+)");
    private static final Pattern CLASS = Pattern.compile("\\.([a-zA-Z][\\w-]*)");

    private static Map<Path, String> templates = Map.of();
    private static String sources = "";

    @BeforeAll
    static void read() throws IOException {
        templates = files(RESOURCES.resolve("templates"), ".html");
        templates.replaceAll((path, text) -> text.replaceAll("(?s)<!--.*?-->", ""));
        sources = String.join("\n", templates.values())
                + String.join("\n", files(Path.of("src/main/java"), ".java").values())
                + String.join("\n", files(RESOURCES.resolve("static/js"), ".js").values())
                + Files.readString(RESOURCES.resolve("static/sw.js"));
    }

    private static Map<Path, String> files(Path folder, String ending) throws IOException {
        Map<Path, String> read = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(f -> f.toString().endsWith(ending)).toList()) {
                read.put(file, Files.readString(file));
            }
        }
        return read;
    }

    private static Set<String> all(Pattern pattern, String text) {
        return pattern.matcher(text)
                .results()
                .map(found -> found.group(pattern == DOTTED ? 0 : 1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void everyWordStandsOnAPage() throws IOException {
        Set<String> keys = all(KEY, Files.readString(RESOURCES.resolve("messages.properties")));
        for (String words : files(RESOURCES.resolve("messages"), ".properties").values()) {
            keys.addAll(all(KEY, words));
        }
        assertThat(keys).hasSizeGreaterThan(500);
        assertThat(unused(keys, sources)).isEmpty();
        assertThat(unused(Set.of("job.gone", "job.state.open"), "text('job.state.' + state)"))
                .containsExactly("job.gone");
    }

    private static List<String> unused(Set<String> keys, String text) {
        Set<String> named = all(DOTTED, text);
        Set<String> stems = all(STEM, text);
        stems.addAll(all(SHORT_STEM, text));
        return keys.stream()
                .filter(key -> !named.contains(key) && stems.stream().noneMatch(key::startsWith))
                .toList();
    }

    @Test
    void everyFragmentIsPutSomewhere() {
        List<String> unused = new ArrayList<>();
        templates.forEach((path, text) -> {
            String place =
                    RESOURCES.resolve("templates").relativize(path).toString().replace(".html", "");
            for (String fragment : all(FRAGMENT, text)) {
                boolean here = used("", fragment, text);
                boolean elsewhere = used(Pattern.quote(place) + "\\s*", fragment, sources);
                if (!here && !elsewhere) {
                    unused.add(place + " :: " + fragment);
                }
            }
        });
        assertThat(unused).isEmpty();
        assertThat(used("fragments/tabs\\s*", "job", "~{fragments/tabs :: jobs(1)} ~{jobs/_head :: job}"))
                .isFalse();
    }

    /** A layout takes the whole of its fragment where a page is decorated with it, and a page its own content without a place. */
    private static boolean used(String place, String fragment, String text) {
        Matcher found = Pattern.compile((place.isEmpty() ? "~\\{\\s*(?:this\\s*)?" : place) + "::\\s*"
                        + Pattern.quote(fragment) + "(?![\\w-])")
                .matcher(text);
        return found.find();
    }

    @Test
    void everyClassIsWorn() throws IOException {
        Set<String> worn = all(Pattern.compile("(?<![\\w-])([a-zA-Z][\\w-]*)(?![\\w-])"), sources);
        List<String> unworn = new ArrayList<>();
        files(RESOURCES.resolve("static/css"), ".css")
                .forEach((path, css) ->
                        all(CLASS, css.replaceAll("(?s)/\\*.*?\\*/", "").replaceAll("url\\([^)]*\\)", "")).stream()
                                .filter(name -> !worn.contains(name))
                                .forEach(name -> unworn.add(path.getFileName() + " ." + name)));
        assertThat(unworn).isEmpty();
    }
}
