/** Pages of people: sign-in, own account, invitation, crew. */
@NullMarked
package org.tallywright.people.web;

import org.jspecify.annotations.NullMarked;
