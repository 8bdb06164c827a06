/** The statistical engine in plain Java: finished tasks in, distributions of hours out; no framework, no clock, no database. */
@NullMarked
package org.tallywright.calibration.engine;

import org.jspecify.annotations.NullMarked;
