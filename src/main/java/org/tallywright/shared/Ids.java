package org.tallywright.shared;

import java.security.SecureRandom;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;

/**
 * New identifiers: UUID version 7 (RFC 9562, section 5.7), so that rows made one after the other lie side by side in
 * an index. The order holds within one running program even when several are made in a millisecond or the clock steps
 * back. The time inside is for ordering only; nothing reads it.
 */
public final class Ids {
    private static final SecureRandom RANDOM = new SecureRandom();
    private static final AtomicLong LAST = new AtomicLong();

    private Ids() {}

    /** A new identifier, greater than every one made before it by this program. */
    public static UUID next() {
        return at(System.currentTimeMillis());
    }

    /** 48 bits of milliseconds, then 12 bits that start at random in their lower half and count up when they must. */
    static UUID at(long millis) {
        long candidate = millis << 12 | RANDOM.nextInt(1 << 11);
        long ordered = LAST.updateAndGet(last -> Math.max(candidate, last + 1));
        long high = (ordered >>> 12) << 16 | 0x7000L | ordered & 0xfffL;
        long low = RANDOM.nextLong() & 0x3fffffffffffffffL | 0x8000000000000000L;
        return new UUID(high, low);
    }
}
