/** The story stick: one strip that shows a job's stages, what was logged on them, its waits and its forecast. */
@NullMarked
package org.tallywright.web.stick;

import org.jspecify.annotations.NullMarked;
