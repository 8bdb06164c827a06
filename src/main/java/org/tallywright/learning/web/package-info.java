/** Pages on which what was learnt meets a job. */
@NullMarked
package org.tallywright.learning.web;

import org.jspecify.annotations.NullMarked;
