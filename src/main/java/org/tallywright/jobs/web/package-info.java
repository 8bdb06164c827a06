/** The pages of a job: list, title block, pieces, tasks, waits, punch list, closing. */
@NullMarked
package org.tallywright.jobs.web;

import org.jspecify.annotations.NullMarked;
