/** The numbers under the engine: a weighted mixed model with priors, its mode and integration, normal mixtures and common draws. */
@NullMarked
package org.tallywright.calibration.engine.model;

import org.jspecify.annotations.NullMarked;
