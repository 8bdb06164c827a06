/** Journeys, accessibility and pictures in a real Chromium; profile {@code browser}. */
@NullMarked
package org.tallywright.browser;

import org.jspecify.annotations.NullMarked;
