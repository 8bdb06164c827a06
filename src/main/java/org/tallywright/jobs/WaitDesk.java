package org.tallywright.jobs;

import java.time.Instant;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;

/** Moves the end of a wait by hand: still tacky in a cold shop, or dry before its time. */
@Service
public class WaitDesk {
    private final JobGate gate;
    private final Waits waits;
    private final ShopClock clock;

    WaitDesk(JobGate gate, Waits waits, ShopClock clock) {
        this.gate = gate;
        this.waits = waits;
        this.clock = clock;
    }

    @Transactional
    public Wait push(UUID jobId, UUID waitId, int version, Instant newEnd, UUID by) {
        gate.holdOpen(jobId, by);
        Wait wait = find(jobId, waitId);
        if (!wait.endsAt().equals(newEnd)) {
            if (wait.version() != version) {
                throw new Stale("wait");
            }
            wait.push(newEnd);
        }
        return wait;
    }

    /** Over now; a wait that is over stays as it is. */
    @Transactional
    public void end(UUID jobId, UUID waitId, UUID by) {
        gate.holdOpen(jobId, by);
        find(jobId, waitId).end(clock.now());
    }

    private Wait find(UUID jobId, UUID waitId) {
        return waits.findByIdAndJobId(waitId, jobId).orElseThrow(() -> new NotHere("wait"));
    }
}
