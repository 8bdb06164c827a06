package org.tallywright.demo;

import java.util.Map;

/** One row of a scenario file by the names in its heading; a column that is not there is a mistake in the scenario. */
record DemoRow(Map<String, String> cells) {
    static final DemoRow NONE = new DemoRow(Map.of());

    String get(String column) {
        String cell = cells.get(column);
        if (cell == null) {
            throw new IllegalStateException("the scenario has no column " + column + " here");
        }
        return cell;
    }

    String getOrDefault(String column, String otherwise) {
        return cells.getOrDefault(column, otherwise);
    }
}
