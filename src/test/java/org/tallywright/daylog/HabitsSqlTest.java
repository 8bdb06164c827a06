package org.tallywright.daylog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tallywright.daylog.SampleDays.TODAY;

import java.sql.Timestamp;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.daylog.LikelyTask.Why;
import org.tallywright.daylog.SampleDays.SampleJob;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

/** Rows come by the rule that the page states. */
@AppTest
class HabitsSqlTest {
    @Autowired
    DayReads reads;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleDays days;

    @Autowired
    JdbcClient jdbc;

    SignedIn jonas;
    SampleJob seat;

    @BeforeEach
    void aJobRuns() {
        jonas = people.helper();
        seat = days.job(
                "Window seat", "Under way", "Glue up", "Plane after glue", "Planned", "Yesterday", "Wednesdays");
        jdbc.sql("update task set position = case name when 'Glue up' then 1 else 2 end")
                .update();
        jdbc.sql("update task set state = 'done', done_on = ? where name = 'Glue up'")
                .param(TODAY)
                .update();
        jdbc.sql("update task set piece_id = null").update();
    }

    @Test
    void putsPlannedThenLastDayThenReadyThenHabitFirst() {
        days.plan(seat.task("Planned"), TODAY, jonas);
        days.logged(jonas, TODAY.minusDays(1), seat, "Yesterday", 60);
        days.logged(jonas, TODAY.minusDays(14), seat, "Wednesdays", 60);
        days.logged(jonas, TODAY.minusDays(21), seat, "Wednesdays", 60);
        jdbc.sql("update task set state = 'planned', started_on = null where name = 'Plane after glue'")
                .update();
        days.curing(seat, "Glue up", "glue sets", Duration.ofMinutes(-5));

        List<LikelyTask> likely = reads.likely(jonas.personId(), TODAY);

        assertThat(likely).extracting(one -> one.place().name()).startsWith("Planned", "Yesterday");
        assertThat(likely)
                .filteredOn(one -> one.why() == Why.READY)
                .extracting(one -> one.place().name())
                .contains("Plane after glue");
        assertThat(likely)
                .filteredOn(one -> one.why() == Why.LAST_DAY)
                .extracting(LikelyTask::soFar)
                .containsExactly(60);
        assertThat(likely).extracting(LikelyTask::why).isSorted();
        assertThat(likely).hasSizeLessThanOrEqualTo(8);
    }

    @Test
    void learnsTheWeekdayAlsoForTheShopsOwnAccount() {
        for (int week = 1; week <= 2; week++) {
            account(week * 7);
        }
        assertThat(reads.likely(jonas.personId(), TODAY))
                .filteredOn(one -> one.why() == Why.WEEKDAY)
                .extracting(one -> one.place().name())
                .containsExactly("Shop: maintenance");
        assertThat(reads.likely(jonas.personId(), TODAY.minusDays(1)))
                .extracting(LikelyTask::why)
                .doesNotContain(Why.WEEKDAY);
    }

    private void account(int daysAgo) {
        people.asShop(() -> jdbc.sql("""
                        insert into time_entry (id, person_id, on_date, account, hour_class, minutes, logged_by, logged_at, version)
                        values (?, ?, ?, 'maintenance', 'clean-up', 60, ?, ?, 0)""")
                .params(
                        Ids.next(),
                        jonas.personId(),
                        TODAY.minusDays(daysAgo),
                        jonas.personId(),
                        Timestamp.from(TestClock.START))
                .update());
    }

    @Test
    void leavesOutWhatIsSomebodyElsesAndWhatIsOver() {
        SignedIn ada = people.owner();
        days.plan(seat.task("Planned"), TODAY, ada);
        SampleJob closed = days.job("Stair", "closed", TODAY.minusDays(60), "Cut treads");
        days.plan(closed.task("Cut treads"), TODAY, jonas);
        assertThat(reads.likely(jonas.personId(), TODAY))
                .extracting(one -> one.place().name())
                .doesNotContain("Planned", "Cut treads", "Glue up");
    }
}
