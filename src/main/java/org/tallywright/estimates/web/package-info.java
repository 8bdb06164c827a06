/** The estimate's pages, the forms of its lines, and the bid as a page to print. */
@NullMarked
package org.tallywright.estimates.web;

import org.jspecify.annotations.NullMarked;
