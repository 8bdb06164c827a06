package org.tallywright.catalog;

/**
 * Passive time that finished work of a kind starts: the touch wait first, the full cure second.
 *
 * @param minutes from the last hour of the task, calendar time
 * @param basis where the figure comes from, or "common practice, no source"
 */
public record KindWait(String what, int minutes, String basis) {
    public static final int MOST_MINUTES = 525_600;
}
