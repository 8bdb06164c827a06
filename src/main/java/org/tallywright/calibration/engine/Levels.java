package org.tallywright.calibration.engine;

import java.util.HashMap;
import java.util.Map;

/** Numbers the levels of a factor in the order they are first met; -1 stands for one never met. */
final class Levels {

    private final Map<String, Integer> number = new HashMap<>();

    int add(String name) {
        Integer known = number.putIfAbsent(name, number.size());
        return known == null ? number.size() - 1 : known;
    }

    int find(String name) {
        return number.getOrDefault(name, -1);
    }

    int size() {
        return number.size();
    }
}
