package org.tallywright.jobs;

import java.util.List;
import java.util.UUID;
import org.tallywright.shared.Hours;
import org.tallywright.web.NavItem;
import org.tallywright.web.TitleBlock;
import org.tallywright.web.stick.StoryStick;

/**
 * What stands on top of every page of a job, as far as the reader's role goes. Shown by the fragment
 * {@code jobs/_head :: head(head)} as the heading of {@code layout/page :: headed}.
 *
 * @param hours everybody's minutes for owner and lead, one's own for a helper
 */
public record JobHead(
        JobRef job,
        TitleBlock block,
        List<NavItem> tabs,
        StoryStick stick,
        List<Stage> stages,
        LoggedHours.OnJob hours) {

    /** {@code 3 h 10 of 2 h}, or {@code 3 h 10} where nothing was estimated. */
    public static String used(Hours logged, Hours estimated) {
        return estimated.isZero() ? logged.toString() : logged + " of " + estimated;
    }

    /**
     * A stage of the job in its order.
     *
     * @param state ahead, entered, done or skipped
     * @param estimated of its tasks that were not dropped; nothing for a helper
     * @param logged everybody's, or a helper's own
     */
    public record Stage(UUID id, String name, String state, Hours estimated, Hours logged) {}
}
