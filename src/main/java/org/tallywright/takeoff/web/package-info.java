/** The pages of takeoff, cut list and buy list. */
@NullMarked
package org.tallywright.takeoff.web;

import org.jspecify.annotations.NullMarked;
