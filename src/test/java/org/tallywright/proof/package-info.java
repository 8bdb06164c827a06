/** Tests that walk the whole application: every route, every form, every role, and the rules of the code. */
@NullMarked
package org.tallywright.proof;

import org.jspecify.annotations.NullMarked;
