package org.tallywright.catalog;

import java.util.UUID;

/** A stage of the shop's work, in its place in the order. */
public record StageCard(UUID id, String name, int position, boolean active, int version) {}
