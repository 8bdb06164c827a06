/** The pages of the catalogue: the owner edits, the lead reads. */
@NullMarked
package org.tallywright.catalog.web;

import org.jspecify.annotations.NullMarked;
