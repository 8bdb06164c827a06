/** The photos of a job: the sheet of them, the forms, and the pictures themselves. */
@NullMarked
package org.tallywright.photos.web;

import org.jspecify.annotations.NullMarked;
