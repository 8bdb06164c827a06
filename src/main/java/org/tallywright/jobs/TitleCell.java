package org.tallywright.jobs;

import java.util.List;
import java.util.UUID;
import org.tallywright.web.SignedIn;
import org.tallywright.web.TitleBlock;

/**
 * Cells that other modules put into a job's title block. An implementation answers with what this person may see and
 * with nothing for the rest; {@code @Order} on the bean decides the place.
 */
public interface TitleCell {
    List<TitleBlock.Cell> cells(UUID jobId, SignedIn me);
}
