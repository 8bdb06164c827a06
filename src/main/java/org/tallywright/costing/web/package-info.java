/** The review of a job: to date while it runs, as frozen when it is closed. */
@NullMarked
package org.tallywright.costing.web;

import org.jspecify.annotations.NullMarked;
