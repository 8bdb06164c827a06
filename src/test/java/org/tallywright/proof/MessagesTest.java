package org.tallywright.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Attribute;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.TextNode;
import org.jsoup.parser.Parser;
import org.junit.jupiter.api.Test;

/** Words of the pages are in {@code messages/*.properties}: a template shows none of its own, and asks for none that is not there. */
class MessagesTest {
    private static final Path RESOURCES = Path.of("src/main/resources");
    private static final Pattern KEY = Pattern.compile("#\\{([\\w.-]+)[}(]");
    private static final Pattern WORD = Pattern.compile("\\p{L}{2,}");
    private static final Set<String> REPLACED = Set.of("th:text", "th:utext", "th:replace", "th:insert");
    private static final Set<String> SPOKEN = Set.of("title", "alt", "placeholder", "aria-label", "content");

    /** Names, not words: they read the same in every language. */
    private static final Set<String> NAMES = Set.of("Tallywright");

    @Test
    void templatesShowNoTextOfTheirOwn() throws IOException {
        List<String> own = new ArrayList<>();
        for (Path template : templates()) {
            own.addAll(ownWords(String.valueOf(template.getFileName()), Files.readString(template)));
        }
        assertThat(own).isEmpty();
    }

    @Test
    void findsWordsThatATemplateShowsOfItsOwn() {
        assertThat(ownWords("bad", """
                        <div><p>Left over</p><p th:text="#{web.home}">Example only</p>
                        <img alt="Oak board"><input placeholder="Name" th:placeholder="#{web.name}"><b>26-014</b></div>""")).containsExactly("bad: Left over", "bad: alt=\"Oak board\"");
    }

    private static List<String> ownWords(String name, String template) {
        List<String> own = new ArrayList<>();
        for (Element element : Jsoup.parse(template, "", Parser.xmlParser()).getAllElements()) {
            if (replaced(element)) {
                continue;
            }
            for (TextNode text : element.textNodes()) {
                if (WORD.matcher(text.text()).find()
                        && !NAMES.contains(text.text().strip())) {
                    own.add(name + ": " + text.text().strip());
                }
            }
            for (Attribute attribute : element.attributes()) {
                if (speaks(element, attribute)) {
                    own.add(name + ": " + attribute);
                }
            }
        }
        return own;
    }

    /** Whether what is written here is replaced when the page is made, here or above. */
    private static boolean replaced(Element element) {
        for (Element at = element; at != null; at = at.parent()) {
            if (REPLACED.stream().anyMatch(at::hasAttr)
                    || Set.of("style", "script").contains(at.tagName())) {
                return true;
            }
            // Left out of every page, or out of this reader's sight.
            if ("all".equals(at.attr("th:remove"))
                    || at.hasAttr("aria-hidden") && !at.attr("aria-hidden").equals("false")) {
                return true;
            }
        }
        return false;
    }

    private static boolean speaks(Element element, Attribute attribute) {
        return SPOKEN.contains(attribute.getKey())
                && !element.tagName().equals("meta")
                && !element.hasAttr("th:" + attribute.getKey())
                && WORD.matcher(attribute.getValue()).find();
    }

    @Test
    void everyKeyThatATemplateNamesIsThere() throws IOException {
        Set<String> known = known();
        Set<String> missing = new TreeSet<>();
        for (Path template : templates()) {
            missing.addAll(missing(String.valueOf(template.getFileName()), Files.readString(template), known));
        }
        assertThat(missing).isEmpty();
        assertThat(missing("bad", "<p th:text=\"#{web.no.such.key}\">x</p><p th:text=\"#{web.versions}\">x</p>", known))
                .containsExactly("bad: web.no.such.key");
    }

    private static Set<String> missing(String name, String template, Set<String> known) {
        Set<String> missing = new TreeSet<>();
        Matcher key = KEY.matcher(template.replaceAll("(?s)<!--.*?-->", ""));
        while (key.find()) {
            if (!known.contains(key.group(1))) {
                missing.add(name + ": " + key.group(1));
            }
        }
        return missing;
    }

    private static Set<String> known() throws IOException {
        Properties all = new Properties();
        List<Path> files = new ArrayList<>(List.of(RESOURCES.resolve("messages.properties")));
        try (Stream<Path> modules = Files.list(RESOURCES.resolve("messages"))) {
            modules.forEach(files::add);
        }
        int keys = 0;
        for (Path file : files) {
            Properties own = new Properties();
            try (Reader text = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
                own.load(text);
            }
            keys += own.size();
            all.putAll(own);
        }
        assertThat(all).as("a key is in one file only").hasSize(keys);
        return all.stringPropertyNames();
    }

    private static List<Path> templates() throws IOException {
        try (Stream<Path> files = Files.walk(RESOURCES.resolve("templates"))) {
            return files.filter(file -> file.toString().endsWith(".html")).toList();
        }
    }
}
