package org.tallywright.catalog;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Adds a stage at the end, or gives it another name. */
public record SaveStage(UUID id, @Nullable Integer version, String name) {}
