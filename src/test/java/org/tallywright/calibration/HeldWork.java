package org.tallywright.calibration;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import org.springframework.context.annotation.Primary;
import org.springframework.stereotype.Component;

/** Keeps background work until a test says so, so that no test races with it. */
@Component
@Primary
public class HeldWork implements Background {
    private final Deque<Runnable> held = new ArrayDeque<>();

    @Override
    public synchronized void later(Runnable work) {
        held.add(work);
    }

    /** A test calls what it wants to see done again. */
    @Override
    public void every(Duration step, Runnable work) {}

    /** Does all that was put off, in this thread. */
    public synchronized void run() {
        while (!held.isEmpty()) {
            held.pop().run();
        }
    }
}
