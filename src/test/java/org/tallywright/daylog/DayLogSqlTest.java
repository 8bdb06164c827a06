package org.tallywright.daylog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tallywright.daylog.SampleDays.TODAY;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.AppTest;
import org.tallywright.daylog.SampleDays.SampleJob;
import org.tallywright.jobs.LoggedHours;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.trail.Trail;
import org.tallywright.web.SignedIn;

@AppTest
class DayLogSqlTest {
    @Autowired
    DayLog log;

    @Autowired
    SampleDays days;

    @Autowired
    SamplePeople people;

    @Autowired
    LoggedHours hours;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Trail trail;

    @Autowired
    TransactionTemplate transaction;

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
    void twoDevicesCannotPutMoreThanADayOnOneDate() throws Exception {
        List<DayOutcome> outcomes = atOnce(
                () -> log.save(day(typed(Ids.next(), "Finish sand", 13 * 60), "long entry")),
                () -> log.save(day(typed(Ids.next(), "Glue up", 13 * 60), "long entry")));
        assertThat(outcomes).filteredOn(DayOutcome.Saved.class::isInstance).hasSize(1);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(13 * 60);
    }

    @Test
    void aRetryThatMeetsItsFirstTryLogsOnce() throws Exception {
        TypedRow row = typed(Ids.next(), "Finish sand", 120);
        List<DayOutcome> outcomes = atOnce(() -> log.save(day(row)), () -> log.save(day(row)));
        assertThat(outcomes).allMatch(DayOutcome.Saved.class::isInstance);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(120);
    }

    @Test
    void asksWhenAnotherDeviceSavedTheSameWorkMeanwhile() {
        log.save(day(typed(Ids.next(), "Finish sand", 120)));
        DayOutcome same = log.save(day(typed(Ids.next(), "Finish sand", 120)));
        DayOutcome more = log.save(day(typed(Ids.next(), "Finish sand", 60)));
        assertThat(((DayOutcome.Held) same).questions())
                .extracting(Question::sentence)
                .anyMatch(s -> s.endsWith("Twice?"));
        assertThat(((DayOutcome.Held) more).questions())
                .extracting(Question::sentence)
                .anyMatch(s -> s.contains("meanwhile"));
    }

    @Test
    void aSaveThatFailsHalfWayLeavesTheDayAsItWas() {
        UUID kept = days.logged(ada, TODAY, seat, "Glue up", 60);
        TypedRow change = new TypedRow(kept, 0, content("Glue up", 90), "90m");
        TypedRow broken = new TypedRow(
                Ids.next(),
                null,
                new Content(Target.task(seat.task("Finish sand")), HourClass.DIRECT, 60, null, "x".repeat(501), ""),
                "1");
        assertThatThrownBy(() -> log.save(new SaveDay(ada.personId(), TODAY, ada, List.of(change, broken), Set.of())))
                .isInstanceOf(DataAccessException.class);
        assertThat(days.minutes(ada, TODAY)).isEqualTo(60);
        assertThat(days.trailOf(kept)).containsExactly("insert");
    }

    @Test
    void refusesOthersToHelpersAndEverythingToBookkeepers() {
        SaveDay hers = new SaveDay(ada.personId(), TODAY, jonas, List.of(typed(Ids.next(), "Glue up", 60)), Set.of());
        assertThatThrownBy(() -> log.save(hers)).isInstanceOf(NotHere.class);
        SignedIn mirel = people.bookkeeper();
        SaveDay own = new SaveDay(mirel.personId(), TODAY, mirel, List.of(), Set.of());
        assertThatThrownBy(() -> log.save(own)).isInstanceOf(NotHere.class);
    }

    @Test
    void theDatabaseRefusesWhatTheCodeWouldLetThrough() {
        insert("08:00", "12:00", 240);
        assertThatThrownBy(() -> insert("11:00", "14:00", 180))
                .rootCause()
                .hasMessageContaining("time_entry_no_overlap");
        assertThatThrownBy(() -> insert(null, null, 1440)).rootCause().hasMessageContaining("more than 24 hours");
    }

    @Test
    void takesAnEntryOffOnceAndRemembersItsId() {
        UUID id = days.logged(jonas, TODAY, seat, "Glue up", 60);
        assertThatThrownBy(() -> log.delete(id, 0, people.person("Wenna Tarr", org.tallywright.web.Role.HELPER)))
                .isInstanceOf(NotHere.class);
        DayLog.Removed first = log.delete(id, 0, ada);
        assertThat(log.delete(id, 0, ada)).isEqualTo(first);
        assertThat(days.trailOf(id)).containsExactly("insert", "delete");
    }

    @Test
    void givesTheJobItsMinutesByTask() {
        days.logged(ada, TODAY, seat, "Glue up", 60);
        days.logged(jonas, TODAY, seat, "Glue up", 90);
        log.save(new SaveDay(
                ada.personId(),
                TODAY,
                ada,
                List.of(new TypedRow(
                        Ids.next(),
                        null,
                        new Content(Target.job(seat.id()), HourClass.OFFICE, 30, null, "", ""),
                        "30m")),
                Set.of()));
        assertThat(hours.onJob(seat.id(), null).byTask()).containsEntry(seat.task("Glue up"), 150);
        assertThat(hours.onJob(seat.id(), null).withoutTask()).isEqualTo(30);
        assertThat(hours.onJob(seat.id(), jonas.personId()).total()).isEqualTo(90);
        assertThat(hours.totals(List.of(seat.id()))).containsEntry(seat.id(), 180);
    }

    private void insert(String from, String to, int minutes) {
        transaction.executeWithoutResult(status -> {
            trail.by(ada.personId());
            jdbc.sql("""
                            insert into time_entry (id, person_id, on_date, job_id, hour_class, minutes, starts_at, ends_at,
                                logged_by, logged_at, version)
                            values (?, ?, ?, ?, 'direct', ?, ?::time, ?::time, ?, ?, 0)""")
                    .params(java.util.Arrays.asList(
                            Ids.next(),
                            ada.personId(),
                            TODAY,
                            seat.id(),
                            minutes,
                            from,
                            to,
                            ada.personId(),
                            java.sql.Timestamp.from(org.tallywright.TestClock.START)))
                    .update();
        });
    }

    private SaveDay day(TypedRow row, String... questions) {
        Set<String> yes = questions.length == 0
                ? Set.of()
                : Set.of(questions[0] + " " + row.id() + " " + row.content().minutes());
        return new SaveDay(ada.personId(), TODAY, ada, List.of(row), yes);
    }

    private TypedRow typed(UUID id, String task, int minutes) {
        return new TypedRow(id, null, content(task, minutes), minutes + "m");
    }

    private Content content(String task, int minutes) {
        return new Content(Target.task(seat.task(task)), HourClass.DIRECT, minutes, null, "", "");
    }

    private static List<DayOutcome> atOnce(Callable<DayOutcome> one, Callable<DayOutcome> other) throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(2);
        try {
            CyclicBarrier together = new CyclicBarrier(2);
            var first = pool.submit(() -> {
                together.await(10, TimeUnit.SECONDS);
                return one.call();
            });
            var second = pool.submit(() -> {
                together.await(10, TimeUnit.SECONDS);
                return other.call();
            });
            return List.of(first.get(30, TimeUnit.SECONDS), second.get(30, TimeUnit.SECONDS));
        } finally {
            pool.shutdownNow();
        }
    }
}
