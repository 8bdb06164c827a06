/** The pages of clients and sites, for owner and lead. */
@NullMarked
package org.tallywright.clients.web;

import org.jspecify.annotations.NullMarked;
