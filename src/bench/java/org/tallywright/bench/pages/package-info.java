/** How long the main pages take in a shop of ten years, beside their own SQL; start-up and memory of the packaged jar. */
@NullMarked
package org.tallywright.bench.pages;

import org.jspecify.annotations.NullMarked;
