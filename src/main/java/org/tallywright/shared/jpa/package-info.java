/** How the shared values are kept in columns. */
@NullMarked
package org.tallywright.shared.jpa;

import org.jspecify.annotations.NullMarked;
