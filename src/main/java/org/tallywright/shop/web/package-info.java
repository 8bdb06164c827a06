/** The shop's settings page. */
@NullMarked
package org.tallywright.shop.web;

import org.jspecify.annotations.NullMarked;
