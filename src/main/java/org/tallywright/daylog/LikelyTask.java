package org.tallywright.daylog;

/**
 * A task that a person is likely to have worked on.
 *
 * @param soFar all minutes of this person on it
 */
public record LikelyTask(Place place, int soFar, boolean plannedToday) {}
