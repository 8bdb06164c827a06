package org.tallywright.catalog;

import java.util.UUID;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;

/**
 * A task kind that was there before now starts from another rate, or counts in another unit. Published in the changing
 * transaction: what was learnt was measured against the old one.
 */
public record StartingRateChanged(UUID taskKind, String name, Unit unit, UnitHours unitHours) {}
