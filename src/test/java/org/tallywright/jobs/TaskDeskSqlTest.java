package org.tallywright.jobs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.shared.UnitHours;
import org.tallywright.web.SignedIn;

@AppTest
class TaskDeskSqlTest {
    private static final Quantity SIXTY = Quantity.of(60);

    @Autowired
    TaskDesk desk;

    @Autowired
    JobDesk jobs;

    @Autowired
    SampleJobs sample;

    @Autowired
    SamplePeople people;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;
    JobRef job;
    UUID kind;

    @BeforeEach
    void runningJob() {
        ada = people.owner();
        job = sample.running(ada, "Window seat");
        kind = sample.kind("edge_band", "Band edges", "Mill", "lf", "0.05");
    }

    @Test
    void estimatesToTheWholeMinute() {
        UUID id = sample.task(job, null, kind, "61.5", ada);
        // 61.5 x 0.05 h = 184.5 minutes, halves up.
        assertThat(number("select estimated_minutes from task where id = ?", id))
                .isEqualTo(185);
    }

    @Test
    void keepsTheStartingRateWhenTheRateOfTheBidChanges() {
        UUID id = sample.task(job, null, kind, "60", ada);
        Task changed = desk.save(job.id(), id, 0, details(SIXTY, new BigDecimal("0.08")), ada.personId());
        assertThat(changed.unitHours()).isEqualTo(UnitHours.of("0.08"));
        assertThat(changed.startingUnitHours()).isEqualTo(UnitHours.of("0.05"));
        assertThat(changed.estimated().minutes()).isEqualTo(288);
    }

    private TaskDetails details(Quantity quantity, BigDecimal rate) {
        return new TaskDetails(kind, null, null, "", quantity, UnitHours.of(rate), null, null);
    }

    @Test
    void takesTheSameSaveTwiceForOne() {
        UUID id = Ids.next();
        TaskDetails details = TaskDetails.proposed(kind, null, SIXTY);
        desk.save(job.id(), id, null, details, ada.personId());
        desk.save(job.id(), id, null, details, ada.personId());
        assertThat(number("select count(*)::int from task where job_id = ?", job.id()))
                .isEqualTo(1);
        assertThatThrownBy(() -> desk.save(
                        job.id(), id, null, TaskDetails.proposed(kind, null, Quantity.of(61)), ada.personId()))
                .isInstanceOf(Stale.class);
    }

    @Test
    void doesNotReachATaskOfAnotherJob() {
        JobRef other = sample.running(ada, "Stair");
        UUID id = sample.task(other, null, kind, "60", ada);
        assertThatThrownBy(() -> desk.start(job.id(), id, ada.personId())).isInstanceOf(NotHere.class);
        assertThatThrownBy(() -> desk.save(job.id(), id, 0, TaskDetails.proposed(kind, null, SIXTY), ada.personId()))
                .isInstanceOf(NotHere.class);
        assertThatThrownBy(() -> desk.finish(job.id(), id, 0, done("60"), ada.personId()))
                .isInstanceOf(NotHere.class);
    }

    @Test
    void refusesAPieceOfAnotherJob() {
        UUID piece = sample.piece(sample.running(ada, "Stair"), "Tread", "36", "1", "11", ada);
        assertThatThrownBy(() -> sample.task(job, piece, kind, "60", ada)).hasMessage("Pick a piece of this job.");
    }

    @Test
    void startsBothWaitsOfItsKindWhenItIsDone() {
        sample.wait(kind, 1, "Touch dry", 240);
        sample.wait(kind, 2, "Full cure", 4320);
        UUID id = sample.task(job, null, kind, "60", ada);
        List<Wait> waits = desk.finish(job.id(), id, 0, done("58.5"), ada.personId());
        assertThat(waits).extracting(Wait::what).containsExactly("Touch dry", "Full cure");
        assertThat(waits.get(0).endsAt()).isEqualTo(TestClock.START.plusSeconds(240 * 60));
        assertThat(waits.get(1).endsAt()).isEqualTo(TestClock.START.plusSeconds(4320 * 60));
        assertThat(text("select quantity_done || ' ' || quantity_confirmed from task where id = ?", id))
                .isEqualTo("58.5000 true");
        assertThat(text("select state from task where id = ?", id)).isEqualTo("done");
        // A second tap is a repeat and starts nothing.
        assertThat(desk.finish(job.id(), id, 0, done("58.5"), ada.personId())).hasSize(2);
        assertThat(number("select count(*)::int from wait where task_id = ?", id))
                .isEqualTo(2);
    }

    private static Finish done(String quantity) {
        return new Finish(Quantity.of(quantity), true, TestClock.START);
    }

    @Test
    void entersItsStageWhenItStarts() {
        UUID id = sample.task(job, null, kind, "60", ada);
        desk.start(job.id(), id, ada.personId());
        assertThat(text("select entered_on::text from job_stage where job_id = ?", job.id()))
                .isEqualTo("2026-11-25");
        assertThat(number("select count(*)::int from job_event where job_id = ? and kind = 'stage'", job.id()))
                .isEqualTo(1);
    }

    @Test
    void refusesToBeFinishedInTheFutureOrOnAnOldPage() {
        UUID id = sample.task(job, null, kind, "60", ada);
        Instant later = TestClock.START.plusSeconds(60);
        assertThatThrownBy(() -> desk.finish(job.id(), id, 0, new Finish(SIXTY, true, later), ada.personId()))
                .isInstanceOf(Refused.class);
        desk.save(job.id(), id, 0, TaskDetails.proposed(kind, null, Quantity.of(70)), ada.personId());
        assertThatThrownBy(() -> desk.finish(job.id(), id, 0, done("60"), ada.personId()))
                .isInstanceOf(Stale.class);
    }

    @Test
    void takesBackAMistakenFinishWithItsWaits() {
        sample.wait(kind, 1, "Touch dry", 240);
        UUID id = sample.task(job, null, kind, "60", ada);
        desk.start(job.id(), id, ada.personId());
        desk.finish(job.id(), id, 1, done("60"), ada.personId());
        desk.reopen(job.id(), id, ada.personId());
        assertThat(text("select state from task where id = ?", id)).isEqualTo("started");
        assertThat(number("select count(*)::int from wait where task_id = ?", id))
                .isZero();
        assertThat(number("select count(*)::int from task where id = ? and quantity_done is null", id))
                .isEqualTo(1);
    }

    @Test
    void keepsWhetherItWasNeverNeeded() {
        UUID id = sample.task(job, null, kind, "60", ada);
        desk.drop(job.id(), id, true, ada.personId());
        assertThat(text("select state || ' ' || never_needed from task where id = ?", id))
                .isEqualTo("dropped true");
        assertThat(text("select to_state from job_event where task_id = ? and from_state = 'planned'", id))
                .isEqualTo("never needed");
    }

    @Test
    void takesNothingInAClosedJob() {
        UUID id = sample.task(job, null, kind, "60", ada);
        jobs.close(job.id(), new Closing(java.util.Map.of(id, Closing.TaskAnswer.DONE), false, true), ada.personId());
        assertThatThrownBy(() -> desk.reopen(job.id(), id, ada.personId()))
                .hasMessage("The job is closed; reopen it to change this.");
        assertThatThrownBy(() -> sample.task(job, null, kind, "60", ada)).isInstanceOf(Refused.class);
        desk.workedOn(
                job.id(), id, TestClock.START.atZone(java.time.ZoneOffset.UTC).toLocalDate(), ada.personId());
    }

    private int number(String sql, UUID id) {
        return jdbc.sql(sql).param(id).query(Integer.class).single();
    }

    private String text(String sql, UUID id) {
        return jdbc.sql(sql).param(id).query(String.class).single();
    }
}
