package org.tallywright.catalog;

import java.util.UUID;

/**
 * What was learnt of two task kinds belongs together from now on, or no longer does. Published in the changing transaction.
 *
 * @param apart true where an earlier merge was taken back
 */
public record TaskKindMerged(UUID taskKind, String name, UUID into, String intoName, boolean apart) {}
