/** How the shared values are read from a form and written on a page. */
@NullMarked
package org.tallywright.shared.web;

import org.jspecify.annotations.NullMarked;
