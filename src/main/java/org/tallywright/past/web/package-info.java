/** Pages of past work: what was built, and the preview of a copy. */
@NullMarked
package org.tallywright.past.web;

import org.jspecify.annotations.NullMarked;
