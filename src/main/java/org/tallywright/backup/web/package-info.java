/** The download of the backup file. */
@NullMarked
package org.tallywright.backup.web;

import org.jspecify.annotations.NullMarked;
