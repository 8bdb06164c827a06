/** From the bytes of a photo as a phone sends it to two small upright JPEGs without notes. Plain Java, no pages, no tables. */
@NullMarked
package org.tallywright.photos.picture;

import org.jspecify.annotations.NullMarked;
