package org.tallywright.jobs.web;

import org.tallywright.jobs.JobState;
import org.tallywright.jobs.TaskState;
import org.tallywright.web.Tag;

/** States as tags; the word says it, the sort repeats it. */
final class StateTags {
    private StateTags() {}

    static Tag of(JobState state) {
        return new Tag(sort(state), state.label());
    }

    private static Tag.Sort sort(JobState state) {
        return switch (state) {
            case RUNNING -> Tag.Sort.NOW;
            case CLOSED, LOST -> Tag.Sort.DONE;
            case LEAD, BIDDING -> Tag.Sort.PLAIN;
        };
    }

    static Tag of(TaskState state, boolean neverNeeded) {
        return switch (state) {
            case OFFERED -> new Tag(Tag.Sort.DONE, state.label());
            case PLANNED -> new Tag(Tag.Sort.PLAIN, state.label());
            case STARTED -> new Tag(Tag.Sort.NOW, state.label());
            case DONE -> new Tag(Tag.Sort.GOOD, state.label());
            case DROPPED -> new Tag(Tag.Sort.DONE, neverNeeded ? "Never needed" : state.label());
        };
    }
}
