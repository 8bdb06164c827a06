/** The sharing tab of a job and the client's own page. */
@NullMarked
package org.tallywright.sharing.web;

import org.jspecify.annotations.NullMarked;
