/** The day sheet, the pages of an entry and of a week, and the hours tab of a job. */
@NullMarked
package org.tallywright.daylog.web;

import org.jspecify.annotations.NullMarked;
