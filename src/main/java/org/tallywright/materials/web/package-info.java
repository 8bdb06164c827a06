/** Pages of material: shop-wide lists, one job's material, and the forms of the four kinds of entry. */
@NullMarked
package org.tallywright.materials.web;

import org.jspecify.annotations.NullMarked;
