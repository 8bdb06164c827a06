package org.tallywright.daylog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tallywright.daylog.SampleDays.TODAY;

import java.sql.Timestamp;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.daylog.SampleDays.SampleJob;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Refused;
import org.tallywright.web.SignedIn;

@AppTest
class ClockSqlTest {
    @Autowired
    ClockDesk desk;

    @Autowired
    DayLog log;

    @Autowired
    TakeBack back;

    @Autowired
    SampleDays days;

    @Autowired
    SamplePeople people;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TestClock clock;

    SignedIn ada;
    SignedIn jonas;
    SampleJob seat;

    @BeforeEach
    void aJobIsRunning() {
        ada = people.owner();
        jonas = people.helper();
        seat = days.job("Window seat", "Finish sand", "Glue up");
    }

    @Test
    void theDatabaseAllowsOneRunAtATimeForEachPerson() {
        run(ada, TestClock.START, null);
        assertThatThrownBy(() -> run(ada, TestClock.START.plusSeconds(60), null))
                .isInstanceOf(DataIntegrityViolationException.class);
        assertThatThrownBy(() -> run(ada, TestClock.START.plusSeconds(60), TestClock.START.plusSeconds(120)))
                .isInstanceOf(DataIntegrityViolationException.class)
                .hasMessageContaining("clock_run_no_overlap");
        run(ada, TestClock.START.minusSeconds(120), TestClock.START);
        run(jonas, TestClock.START, null);
        assertThat(jdbc.sql("select count(*) from clock_run")
                        .query(Integer.class)
                        .single())
                .isEqualTo(3);
    }

    @Test
    void theDatabaseKeepsARunInOrder() {
        assertThatThrownBy(() -> run(ada, TestClock.START, TestClock.START.minusSeconds(1)))
                .hasMessageContaining("clock_run_ends_after_start");
        run(ada, TestClock.START, null);
        assertThatThrownBy(() -> set("end_known = true")).hasMessageContaining("clock_run_known_end");
        assertThatThrownBy(() -> set("dropped_at = started_at")).hasMessageContaining("clock_run_dropped_when_ended");
        UUID entry = days.logged(ada, TODAY, seat, "Glue up", 30);
        assertThatThrownBy(() -> set("entry_id = '" + entry + "', taken_as = '" + entry + "'"))
                .hasMessageContaining("clock_run_taken_when_ended");
    }

    @Test
    void aSecondStartOfTheSameIdIsARepeatAndASwitchStopsTheOther() {
        UUID first = start("Finish sand", null).run().id();
        assertThat(desk.start(first, null, task("Finish sand"), HourClass.DIRECT, ada)
                        .run()
                        .id())
                .isEqualTo(first);
        clock.advance(Duration.ofMinutes(20));

        ClockDesk.Started second = start("Glue up", first);

        assertThat(second.met()).isFalse();
        assertThat(desk.open(ada.personId())).extracting(ClockRun::runs).containsExactly(false, true);
        assertThat(ClockOffer.of(desk.open(ada.personId())).get(TODAY))
                .extracting(ClockOffer::minutes)
                .containsExactly(20);
    }

    @Test
    void aStartThatDidNotKnowWhatRunsChangesNothing() {
        UUID first = start("Finish sand", null).run().id();
        ClockDesk.Started other = start("Glue up", null);
        assertThat(other.met()).isTrue();
        assertThat(other.run().id()).isEqualTo(first);
        assertThat(desk.open(ada.personId())).hasSize(1);
    }

    @Test
    void devicesThatStartAtOnceEndInOneRun() throws Exception {
        CyclicBarrier gate = new CyclicBarrier(4);
        ExecutorService devices = Executors.newFixedThreadPool(4);
        List<Future<ClockDesk.Started>> starts = new ArrayList<>();
        try {
            for (int n = 0; n < 4; n++) {
                String task = n % 2 == 0 ? "Finish sand" : "Glue up";
                starts.add(devices.submit(() -> {
                    gate.await();
                    return start(task, null);
                }));
            }
            Set<UUID> told = new java.util.HashSet<>();
            for (Future<ClockDesk.Started> start : starts) {
                told.add(start.get().run().id());
            }
            assertThat(told).hasSize(1);
        } finally {
            devices.shutdownNow();
        }
        assertThat(desk.open(ada.personId())).hasSize(1);
    }

    @Test
    void takesAnOfferWithItsEntryAndFreesItWithIt() {
        UUID run = start("Finish sand", null).run().id();
        clock.advance(Duration.ofMinutes(72));
        desk.stop(run, ada);
        UUID entry = Ids.next();

        DayOutcome.Saved saved = (DayOutcome.Saved) desk.save(day(entry, 72), List.of(take(entry, run, 72)));
        assertThat(desk.open(ada.personId())).isEmpty();
        desk.save(day(entry, 72), List.of(take(entry, run, 72)));
        assertThat(days.minutes(ada, TODAY)).as("a repeat").isEqualTo(72);

        back.undo(ada.personId(), TODAY, saved.changes(), ada);
        assertThat(desk.open(ada.personId())).as("taken back").hasSize(1);
        assertThatThrownBy(() -> desk.save(day(entry, 60), List.of(take(entry, run, 60))))
                .isInstanceOf(Refused.class);
    }

    @Test
    void anEntryThatIsBroughtBackHasItsRunsAgain() {
        UUID run = start("Finish sand", null).run().id();
        clock.advance(Duration.ofMinutes(72));
        desk.stop(run, ada);
        UUID entry = Ids.next();
        desk.save(day(entry, 72), List.of(take(entry, run, 72)));

        DayLog.Removed gone = log.delete(entry, 0, ada);
        assertThat(desk.open(ada.personId())).hasSize(1);
        back.undo(ada.personId(), TODAY, List.of(gone.change()), ada);

        assertThat(days.minutes(ada, TODAY)).isEqualTo(72);
        assertThat(desk.open(ada.personId())).isEmpty();
    }

    @Test
    void sumsSecondsBeforeItRounds() {
        UUID last = null;
        for (int n = 0; n < 3; n++) {
            last = start("Finish sand", null).run().id();
            clock.advance(Duration.ofSeconds(10 * 60 + 40));
            desk.stop(last, ada);
            clock.advance(Duration.ofMinutes(1));
        }
        assertThat(ClockOffer.of(desk.open(ada.personId())).get(TODAY))
                .extracting(ClockOffer::minutes)
                .containsExactly(32);
    }

    @Test
    void aForgottenClockIsNeverOfferedAsItStands() {
        UUID run = start("Finish sand", null).run().id();
        clock.advance(Duration.ofHours(5).plusSeconds(1));
        assertThat(ClockRule.forgotten(desk.of(run, ada), shopClock)).isTrue();
        desk.stop(run, ada);
        assertThat(ClockOffer.of(desk.open(ada.personId()))).isEmpty();

        assertThatThrownBy(() -> desk.ended(run, "5h30", ada)).isInstanceOf(NotUnderstood.class);
        desk.ended(run, "2h", ada);

        assertThat(ClockOffer.of(desk.open(ada.personId())).get(TODAY))
                .extracting(ClockOffer::minutes)
                .containsExactly(120);
    }

    @Test
    void aWordKeepsALongClockBelievedUntilMidnight() {
        UUID run = start("Finish sand", null).run().id();
        clock.advance(Duration.ofHours(5).plusMinutes(30));
        desk.stillOn(run, ada);
        clock.advance(Duration.ofHours(4));
        assertThat(ClockRule.forgotten(desk.of(run, ada), shopClock)).isFalse();
        clock.advance(Duration.ofHours(1)); // 00:10
        assertThat(ClockRule.forgotten(desk.of(run, ada), shopClock)).isTrue();
        assertThatThrownBy(() -> desk.stillOn(run, ada)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> desk.ended(run, "10h25", ada))
                .as("past midnight")
                .isInstanceOf(NotUnderstood.class)
                .hasMessageContaining("10 h 20");
        assertThat(desk.ended(run, "10h20", ada).offered()).isTrue();
    }

    @Test
    void onlyItsOwnerTouchesAClock() {
        UUID run = start("Finish sand", null).run().id();
        assertThatThrownBy(() -> desk.stop(run, jonas)).isInstanceOf(NotHere.class);
        assertThatThrownBy(() -> desk.drop(run, jonas)).isInstanceOf(NotHere.class);
        assertThatThrownBy(() -> desk.ended(run, "1h", jonas)).isInstanceOf(NotHere.class);
        assertThatThrownBy(() -> desk.start(run, null, task("Glue up"), HourClass.DIRECT, jonas))
                .isInstanceOf(NotHere.class);
        assertThat(desk.open(jonas.personId())).isEmpty();
    }

    @Test
    void whatWasThrownAwayCanBeKeptAfterAll() {
        UUID run = start("Finish sand", null).run().id();
        clock.advance(Duration.ofMinutes(30));
        desk.stop(run, ada);
        desk.drop(run, ada);
        assertThat(desk.open(ada.personId())).isEmpty();
        desk.keep(run, ada);
        assertThat(desk.open(ada.personId())).hasSize(1);
    }

    @Test
    void theTrailSaysWhoAndWhen() {
        UUID run = start("Finish sand", null).run().id();
        desk.stop(run, ada);
        assertThat(jdbc.sql("select act from audit_entry where subject = 'clock_run' and subject_id = ? order by id")
                        .param(run.toString())
                        .query(String.class)
                        .list())
                .containsExactly("insert", "update");
    }

    @Autowired
    org.tallywright.shared.ShopClock shopClock;

    private ClockDesk.Started start(String task, UUID seen) {
        return desk.start(Ids.next(), seen, task(task), HourClass.DIRECT, ada);
    }

    private Target task(String name) {
        return Target.task(seat.task(name));
    }

    private SaveDay day(UUID entry, int minutes) {
        Content content = new Content(task("Finish sand"), HourClass.DIRECT, minutes, null, "", "");
        return new SaveDay(ada.personId(), TODAY, ada, List.of(new TypedRow(entry, null, content, "")), Set.of());
    }

    private static ClockDesk.Take take(UUID entry, UUID run, int minutes) {
        return new ClockDesk.Take(entry, run, minutes);
    }

    private void set(String assignment) {
        people.asShop(() -> jdbc.sql("update clock_run set " + assignment).update());
    }

    private void run(SignedIn person, Instant from, Instant to) {
        people.asShop(() -> jdbc.sql("""
                        insert into clock_run (id, person_id, on_date, job_id, task_id, hour_class, started_at, confirmed_at, ended_at)
                        values (?, ?, ?, ?, ?, 'direct', ?, ?, ?::timestamptz)""")
                .params(
                        Ids.next(),
                        person.personId(),
                        TODAY,
                        seat.id(),
                        seat.task("Glue up"),
                        Timestamp.from(from),
                        Timestamp.from(from),
                        to == null ? null : to.toString())
                .update());
    }
}
