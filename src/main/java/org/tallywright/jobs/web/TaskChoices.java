package org.tallywright.jobs.web;

import java.util.Map;

/** What the form of a task offers, each by id in order. */
record TaskChoices(
        Map<String, String> kinds, Map<String, String> pieces, Map<String, String> stages, Map<String, String> people) {

    String piece(String id) {
        return pieces.getOrDefault(id, "");
    }

    String stage(String id) {
        return stages.getOrDefault(id, "");
    }

    String person(String id) {
        return people.getOrDefault(id, "");
    }
}
