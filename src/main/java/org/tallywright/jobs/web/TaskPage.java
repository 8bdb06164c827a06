package org.tallywright.jobs.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.tallywright.jobs.JobHead;

/**
 * One task as one reader may see it.
 *
 * @param estimated null where the reader sees no estimates
 */
record TaskPage(
        JobHead head,
        JobPage.Rights may,
        JobPage.TaskLine line,
        JobPageRows.TaskRow task,
        @Nullable String estimated,
        List<JobPage.WaitLine> waits,
        List<JobPage.EventLine> events) {}
