package org.tallywright.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Timestamp;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

/** Which calibrations are kept: in use, the last thirty, and those that a bid or a running job was forecast with. */
@AppTest
class KeptCalibrationsSqlTest {
    @Autowired
    SamplePast past;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SampleEstimates estimates;

    @Autowired
    CalibrationRows rows;

    @Autowired
    JdbcClient jdbc;

    /** Older than all before it by a day. */
    private UUID older(int days, String state) {
        UUID id = Ids.next();
        Timestamp at = Timestamp.from(TestClock.START.minus(Duration.ofDays(days)));
        jdbc.sql("""
                        insert into calibration (id, asked_at, made_at, state, why, fingerprint, past, figures, record)
                        values (?, ?, ?, ?, 'test', 'f', '{}', '{}', '[]')""").params(id, at, state.equals("done") ? at : null, state).update();
        return id;
    }

    private boolean isKept(UUID id) {
        return rows.row(id).isPresent();
    }

    private void refer(JobRef job, UUID calibration) {
        jdbc.sql("update running_forecast set calibration_id = ? where job_id = ?")
                .params(calibration, job.id())
                .update();
    }

    @Test
    void forgetsOnlyWhatNobodyCanGoBackTo() {
        SignedIn ada = people.owner();
        past.jobs(ada, 2, "1");
        UUID ofBid = rows.current().orElseThrow();
        estimates.issued(estimates.windowSeat(ada), ada);
        jdbc.sql("update calibration set made_at = ? where id = ?")
                .params(Timestamp.from(TestClock.START.minus(Duration.ofDays(100))), ofBid)
                .update();
        JobRef running = jobs.running(ada, "Bookcase");
        JobRef ended = jobs.running(ada, "Shelf");
        for (JobRef job : List.of(running, ended)) {
            jdbc.sql("""
                            insert into running_forecast (id, job_id, on_date, made_at, jobs_known, share_done, hours_so_far,
                                hours_on_no_line, stage, unwidened, at_end, tasks)
                            values (?, ?, date '2026-10-01', ?, 3, 0.3, 1, 0, 25, '{1}', '{1}', '[]')""")
                    .params(Ids.next(), job.id(), Timestamp.from(TestClock.START))
                    .update();
        }
        jdbc.sql("update job set state = 'closed', closed_on = date '2026-11-01' where id = ?")
                .param(ended.id())
                .update();
        List<UUID> newest = new ArrayList<>();
        for (int n = 1; n < CalibrationRows.NEWEST; n++) {
            newest.add(older(n, "done"));
        }
        UUID ofRunning = older(101, "done");
        UUID ofEnded = older(102, "done");
        UUID inUse = older(103, "done");
        UUID old = older(104, "done");
        UUID failed = older(105, "failed");
        refer(running, ofRunning);
        refer(ended, ofEnded);
        rows.use(inUse);
        newest.add(0, older(0, "done"));
        assertThat(rows.prune()).isEqualTo(3);
        assertThat(newest).allMatch(this::isKept);
        assertThat(List.of(ofBid, ofRunning, inUse)).allMatch(this::isKept);
        assertThat(List.of(ofEnded, old, failed)).noneMatch(this::isKept);
        assertThat(jdbc.sql("select count(*) from running_forecast where calibration_id is null and jobs_known = 3")
                        .query(Integer.class)
                        .single())
                .as("the ended job's forecast stays, without the calibration behind it")
                .isEqualTo(1);
        assertThat(rows.prune()).isZero();
    }

    @Test
    void listsTheNewestThirtyTheOneInUseWhatIsUnderWayAndAFewFailedOnes() {
        List<UUID> newest = new ArrayList<>();
        for (int n = 0; n < CalibrationRows.NEWEST; n++) {
            newest.add(older(n, "done"));
            older(n, "failed");
        }
        UUID inUse = older(200, "done");
        UUID tooOld = older(199, "done");
        UUID left = older(300, "running");
        rows.use(inUse);
        List<UUID> listed = rows.listed().stream().map(CalibrationRows.Row::id).toList();
        assertThat(listed)
                .containsAll(newest)
                .contains(inUse, left)
                .doesNotContain(tooOld)
                .hasSize(CalibrationRows.NEWEST + 2 + 5);
        assertThat(rows.underWay().map(CalibrationRows.Row::id))
                .as("though thirty are newer")
                .contains(left);
    }

    @Test
    void fewAreAllKept() {
        SignedIn ada = people.owner();
        past.jobs(ada, 2, "1");
        past.job(ada, SamplePast.FIRST.plusMonths(4), "2");
        past.calibrated();
        assertThat(rows.newest(9)).hasSize(2);
        assertThat(rows.prune()).isZero();
    }
}
