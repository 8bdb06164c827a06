package org.tallywright.calibration;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** The newest answers, each under all it was made from: a page that asks again does not compute again. */
final class Remembered<V> {
    private static final int MOST = 60;

    /** @param input all that the answer depends on, compared by content */
    private record Asked(@Nullable UUID calibration, Object input) {}

    private final Map<Asked, V> answers = new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Asked, V> eldest) {
            return size() > MOST;
        }
    };

    V of(@Nullable UUID calibration, Object input, Supplier<V> make) {
        Asked asked = new Asked(calibration, input);
        synchronized (answers) {
            V known = answers.get(asked);
            if (known != null) {
                return known;
            }
        }
        V made = make.get();
        synchronized (answers) {
            answers.put(asked, made);
        }
        return made;
    }
}
