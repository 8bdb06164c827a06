/** A job tracker and time log for the owner of a small finish-carpentry and built-ins shop. */
@NullMarked
package org.tallywright;

import org.jspecify.annotations.NullMarked;
