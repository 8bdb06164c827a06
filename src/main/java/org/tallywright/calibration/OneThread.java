package org.tallywright.calibration;

import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.stereotype.Component;

/** One thread of low priority, so that pages are served as before; what it leaves undone is taken up at the next start. */
@Component
class OneThread implements Background, DisposableBean {
    private final ScheduledExecutorService thread = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread made = new Thread(work, "calibration");
        made.setDaemon(true);
        made.setPriority(Thread.MIN_PRIORITY);
        return made;
    });

    @Override
    public void later(Runnable work) {
        thread.execute(work);
    }

    @Override
    public void every(Duration step, Runnable work) {
        thread.scheduleWithFixedDelay(work, step.toSeconds(), step.toSeconds(), TimeUnit.SECONDS);
    }

    @Override
    public void destroy() throws InterruptedException {
        thread.shutdownNow();
        thread.awaitTermination(5, TimeUnit.SECONDS);
    }
}
