package org.tallywright.takeoff;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.UUID;

/**
 * What somebody typed of a piece's takeoff.
 *
 * @param answers one {@code name = value} a line
 * @param parts those listed or changed by hand, each with its version
 */
public record TypedTakeoff(String answers, Map<UUID, Integer> parts) {
    public static final TypedTakeoff NOTHING = new TypedTakeoff("", Map.of());

    public TypedTakeoff {
        parts = Map.copyOf(parts);
    }

    boolean has(UUID part, int version) {
        return Objects.equals(parts.get(part), version);
    }

    /** {@code shelves (6 then), material of case}: the answers that are others by now; empty where none is. */
    String otherAnswers(TypedTakeoff now) {
        Map<String, String> then = Answers.read(answers);
        Map<String, String> given = Answers.read(now.answers);
        TreeSet<String> names = new TreeSet<>(then.keySet());
        names.addAll(given.keySet());
        List<String> others = new ArrayList<>();
        for (String name : names) {
            if (!then.getOrDefault(name, "").equals(given.getOrDefault(name, ""))) {
                others.add(words(name, then.getOrDefault(name, "")));
            }
        }
        return String.join(", ", others);
    }

    /** A material is answered by its id, which says nothing. */
    private static String words(String name, String then) {
        if (name.startsWith(TakeoffDesk.MATERIAL)) {
            return "material of " + name.substring(TakeoffDesk.MATERIAL.length());
        }
        return name + (then.isEmpty() ? " (not answered then)" : " (" + then + " then)");
    }
}
