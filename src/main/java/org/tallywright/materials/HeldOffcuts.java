package org.tallywright.materials;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobDesk;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.jpa.SaveTurn;
import org.tallywright.trail.Trail;

/** Which offcuts are held for which job. A closed or lost job holds nothing any more, nor does an offcut that is used up. */
@Service
@Transactional
public class HeldOffcuts {
    private static final String HELD = """
            from offcut_hold h join job j on j.id = h.job_id and j.state not in ('closed', 'lost')
            join offcut o on o.id = h.id and o.gone_on is null""";

    private final OffcutHolds holds;
    private final JobDesk jobs;
    private final JdbcClient jdbc;
    private final SaveTurn turn;
    private final ShopClock clock;
    private final Trail trail;

    HeldOffcuts(OffcutHolds holds, JobDesk jobs, JdbcClient jdbc, SaveTurn turn, ShopClock clock, Trail trail) {
        this.holds = holds;
        this.jobs = jobs;
        this.jdbc = jdbc;
        this.turn = turn;
        this.clock = clock;
        this.trail = trail;
    }

    /** The number of the job that each is held for, by offcut. */
    @Transactional(readOnly = true)
    public Map<UUID, String> all() {
        Map<UUID, String> held = new HashMap<>();
        jdbc.sql("select h.id, j.number " + HELD).query(row -> {
            held.put(row.getObject(1, UUID.class), row.getString(2));
        });
        return held;
    }

    /**
     * Holds these and no others for the job; said again it is a repeat.
     *
     * @throws Refused where one is held for another job or gone meanwhile
     */
    public void hold(UUID job, Collection<UUID> offcuts, UUID by) {
        trail.by(by);
        jobs.holdOpen(job, by);
        LocalDate today = clock.today();
        TreeSet<UUID> wanted = new TreeSet<>(offcuts);
        // In the order of their ids, so that two such saves cannot wait for each other.
        wanted.forEach(turn::of);
        for (UUID offcut : wanted) {
            guard(offcut, job);
            OffcutHold hold = holds.findById(offcut).orElse(null);
            if (hold == null) {
                holds.save(new OffcutHold(offcut, job, today, by));
            } else if (!hold.isFor(job)) {
                hold.pass(job, today, by);
            }
        }
        holds.findByJobId(job).stream()
                .filter(hold -> !wanted.contains(hold.id()))
                .forEach(holds::delete);
    }

    /**
     * Lets one go; said again it is a repeat.
     *
     * @throws NotHere where there is no such offcut, or it is held for another job
     */
    public void release(UUID job, UUID offcut, UUID by) {
        trail.by(by);
        jobs.holdOpen(job, by);
        turn.of(offcut);
        OffcutHold hold = holds.findById(offcut).orElse(null);
        if (hold == null ? !isKept(offcut) : !hold.isFor(job)) {
            throw new NotHere("offcut");
        }
        if (hold != null) {
            holds.delete(hold);
        }
    }

    private boolean isKept(UUID offcut) {
        return jdbc.sql("select exists (select 1 from offcut where id = ?)")
                .param(offcut)
                .query(Boolean.class)
                .single();
    }

    private void guard(UUID offcut, UUID job) {
        List<String> other = jdbc.sql("select j.number " + HELD + " where h.id = ? and h.job_id <> ?")
                .params(offcut, job)
                .query(String.class)
                .list();
        if (!other.isEmpty()) {
            throw new Refused(
                    "One of these offcuts is held for " + other.get(0) + " meanwhile. Look at the list again.");
        }
        boolean here = jdbc.sql("select exists (select 1 from offcut where id = ? and gone_on is null)")
                .param(offcut)
                .query(Boolean.class)
                .single();
        if (!here) {
            throw new Refused("One of these offcuts is used up meanwhile. Look at the list again.");
        }
    }
}
