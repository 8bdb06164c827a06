package org.tallywright.calibration.engine;

import java.util.HashMap;
import java.util.Map;

/** Numbers the levels of a factor in the order they are first met and counts how often; -1 stands for one never met. */
final class Levels {

    private final Map<String, Integer> number = new HashMap<>();
    private final Map<String, Integer> count = new HashMap<>();

    int add(String name) {
        count.merge(name, 1, Integer::sum);
        Integer known = number.putIfAbsent(name, number.size());
        return known == null ? number.size() - 1 : known;
    }

    int find(String name) {
        return number.getOrDefault(name, -1);
    }

    int count(String name) {
        return count.getOrDefault(name, 0);
    }

    int size() {
        return number.size();
    }
}
