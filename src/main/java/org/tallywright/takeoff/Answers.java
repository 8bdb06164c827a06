package org.tallywright.takeoff;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/** What a piece answers otherwise than its kind: {@code name = value} a line. */
final class Answers {
    private Answers() {}

    static Map<String, String> read(String kept) {
        Map<String, String> answers = new LinkedHashMap<>();
        kept.lines().forEach(line -> {
            int at = line.indexOf('=');
            if (at > 0) {
                answers.put(
                        line.substring(0, at).strip(), line.substring(at + 1).strip());
            }
        });
        return answers;
    }

    static String write(Map<String, String> answers) {
        return answers.entrySet().stream()
                .filter(e -> !e.getValue().isBlank())
                .map(e -> e.getKey() + " = " + e.getValue().strip())
                .collect(Collectors.joining("\n"));
    }
}
