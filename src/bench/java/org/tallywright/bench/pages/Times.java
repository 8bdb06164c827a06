package org.tallywright.bench.pages;

import java.util.Arrays;

/** Durations in the order they were measured. */
final class Times {
    private long[] nanos = new long[64];
    private int count;

    void add(long nanosTaken) {
        if (count == nanos.length) {
            nanos = Arrays.copyOf(nanos, count * 2);
        }
        nanos[count++] = nanosTaken;
    }

    void addAll(Times others) {
        for (int n = 0; n < others.count; n++) {
            add(others.nanos[n]);
        }
    }

    /** Nearest rank, in milliseconds; 0.5 is the median. */
    double ms(double share) {
        long[] sorted = Arrays.copyOf(nanos, count);
        Arrays.sort(sorted);
        return sorted[Math.max(0, (int) Math.ceil(share * count) - 1)] / 1e6;
    }
}
