package org.tallywright.shared;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The single-character fractions that phones put in by themselves. */
final class VulgarFractions {
    private static final Map<Integer, String> SPELT = Map.ofEntries(
            Map.entry(0x00bc, "1/4"),
            Map.entry(0x00bd, "1/2"),
            Map.entry(0x00be, "3/4"),
            Map.entry(0x2153, "1/3"),
            Map.entry(0x2154, "2/3"),
            Map.entry(0x215b, "1/8"),
            Map.entry(0x215c, "3/8"),
            Map.entry(0x215d, "5/8"),
            Map.entry(0x215e, "7/8"));

    private VulgarFractions() {}

    static @Nullable String spelt(int codePoint) {
        return SPELT.get(codePoint);
    }
}
