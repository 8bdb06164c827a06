/** The pages of the site measure. */
@NullMarked
package org.tallywright.measuring.web;

import org.jspecify.annotations.NullMarked;
