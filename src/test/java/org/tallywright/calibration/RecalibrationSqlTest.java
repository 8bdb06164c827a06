package org.tallywright.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.catalog.SaveTaskKind;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.catalog.TaskKindDesk;
import org.tallywright.catalog.TaskKindMerging;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Refused;
import org.tallywright.shared.UnitHours;
import org.tallywright.web.SignedIn;
import tools.jackson.databind.json.JsonMapper;

@AppTest
class RecalibrationSqlTest {
    @Autowired
    SamplePast past;

    @Autowired
    SamplePeople people;

    @Autowired
    RateBook book;

    @Autowired
    Recalibration recalibration;

    @Autowired
    CalibrationRows rows;

    @Autowired
    PastReader reader;

    @Autowired
    JobDesk jobs;

    @Autowired
    HeldWork held;

    @Autowired
    TaskKinds kinds;

    @Autowired
    TaskKindDesk desk;

    @Autowired
    TaskKindMerging merging;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    JsonMapper json;

    private RateBook.Entry sanding() {
        return book.history(past.sanding()).entry();
    }

    private double typical() {
        UnitHours typical = sanding().typical();
        return typical == null ? 0 : typical.amount().doubleValue();
    }

    private double upperEnd() {
        UnitHours high = sanding().high();
        return high == null ? 0 : high.amount().doubleValue();
    }

    @Test
    void aShopWithoutFinishedJobsHasStartingRatesOnly() {
        people.owner();
        assertThat(sanding().typical()).isNull();
        assertThat(sanding().startingPercent()).isEqualTo(100);
        past.calibrated();
        assertThat(sanding().tasks()).isZero();
        assertThat(sanding().startingPercent()).isEqualTo(100);
    }

    @Test
    void learnsFromFinishedJobsTowardsWhatTheyTook() {
        SignedIn ada = people.owner();
        past.jobs(ada, 2, "1.5");
        assertThat(typical()).isGreaterThan(0.1);
        int starting2 = sanding().startingPercent();
        past.jobs(ada, 8, "1.5");
        assertThat(sanding().tasks()).isEqualTo(10);
        assertThat(sanding().jobs()).isEqualTo(10);
        assertThat(typical()).isCloseTo(0.15, within(0.012));
        assertThat(sanding().startingPercent()).isLessThan(starting2);
    }

    @Test
    void closingAndReopeningAskForANewCalibration() {
        SignedIn ada = people.owner();
        JobRef job = past.job(ada, SamplePast.FIRST, "2");
        past.calibrated();
        assertThat(sanding().tasks()).isEqualTo(1);
        jobs.reopen(job.id(), "a door rubs", ada.personId());
        assertThat(rows.newest(1).get(0).why()).isEqualTo("Job " + job.number() + " reopened");
        assertThat(sanding().tasks())
                .as("the old one holds until the new one is made")
                .isEqualTo(1);
        held.run();
        assertThat(sanding().tasks()).isZero();
    }

    @Test
    void theSameDataMakeNoNewCalibration() {
        SignedIn ada = people.owner();
        past.jobs(ada, 3, "1.2");
        past.calibrated();
        past.calibrated();
        assertThat(rows.newest(9)).hasSize(1);
    }

    @Test
    void leavesAJobOutAndGoesBack() {
        SignedIn ada = people.owner();
        past.jobs(ada, 5, "1");
        JobRef odd = past.job(ada, SamplePast.FIRST.plusMonths(6), "3");
        past.calibrated();
        UUID withOdd = rows.current().orElseThrow();
        double high = upperEnd();
        assertThatThrownBy(() -> recalibration.leaveOut(odd.id().toString(), " ", ada.personId()))
                .isInstanceOf(Refused.class);
        recalibration.leaveOut(odd.id().toString(), "flood in the shop", ada.personId());
        held.run();
        assertThat(upperEnd()).isLessThan(high);
        assertThat(sanding().tasks()).isEqualTo(5);
        assertThat(rows.newest(1).get(0).why()).contains("flood in the shop");
        recalibration.use(withOdd, ada.personId());
        assertThat(sanding().tasks()).isEqualTo(6);
        recalibration.takeBack(odd.id().toString(), ada.personId());
        held.run();
        assertThat(upperEnd()).isEqualTo(high);
    }

    @Test
    void anAcceptedRateCorrectsNothingTwice() {
        SignedIn ada = people.owner();
        past.jobs(ada, 8, "1.5");
        RateBook.Entry before = sanding();
        UnitHours typical = before.typical();
        assertThat(typical).isNotNull();
        book.accept(past.sanding(), before.kind().version(), typical, "own hours", ada.personId());
        held.run();
        RateBook.Entry after = sanding();
        assertThat(after.kind().unitHours()).isEqualTo(typical);
        assertThat(typical()).isCloseTo(typical.amount().doubleValue(), within(0.012));
        assertThat(after.tasks()).isEqualTo(8);
    }

    @Test
    void aStartingRateChangedByHandIsMeasuredAgain() {
        SignedIn ada = people.owner();
        past.jobs(ada, 8, "1.5");
        double before = typical();
        edit(past.sanding(), "Sand to 150", "0.2", ada);
        assertThat(rows.newest(1).get(0).why())
                .isEqualTo("New starting rate of \"Sand to 150\": 0.20 h for one square foot");
        assertThat(typical()).as("the old one holds until the new one is made").isEqualTo(before);
        held.run();
        assertThat(sanding().tasks()).isEqualTo(8);
        assertThat(typical()).as("what the work took is still what it took").isCloseTo(0.15, within(0.012));
    }

    @Test
    void lookingBackAFinishedJobIsMeasuredAgainstTheRateOfItsDay() {
        SignedIn ada = people.owner();
        past.jobs(ada, 4, "1.5");
        List<Judged> before = record();
        edit(past.sanding(), "Sand to 150", "0.2", ada);
        held.run();
        assertThat(sanding().kind().unitHours()).isEqualTo(UnitHours.of("0.2"));
        assertThat(record()).extracting(Judged::estimate).containsOnly(7.0);
        assertThat(record())
                .extracting(Judged::hours)
                .isEqualTo(before.stream().map(Judged::hours).toList());
        assertThat(jdbc.sql("select unit || ' ' || unit_hours || ' ' || until_at from starting_rate_before")
                        .query(String.class)
                        .single())
                .startsWith("sf 0.10000 2026-11-25");
    }

    private List<Judged> record() {
        return rows.kept(rows.current().orElseThrow()).orElseThrow().record();
    }

    @Test
    void aNewEngineMakesOneNewCalibrationOfTheSameData() {
        SignedIn ada = people.owner();
        past.jobs(ada, 3, "1.2");
        recalibration.start();
        held.run();
        assertThat(rows.newest(9)).hasSize(1);
        jdbc.sql("update calibration set figures = jsonb_set(figures, '{engine}', '1'), fingerprint = 'of the old one'")
                .update();
        recalibration.start();
        held.run();
        recalibration.start();
        held.run();
        assertThat(rows.newest(9))
                .extracting(CalibrationRows.Row::why)
                .containsExactly("The program was renewed and works some things out in another way", "asked by a test");
        assertThat(rows.fingerprint(reader.read()))
                .isEqualTo(rows.newest(1).get(0).fingerprint());
    }

    @Test
    void whatWasKeptByAnOlderProgramCanStillBeReadAndUsed() {
        SignedIn ada = people.owner();
        past.jobs(ada, 3, "1.2");
        CalibrationRows.Kept kept = rows.kept(rows.current().orElseThrow()).orElseThrow();
        String old = json.writeValueAsString(kept.past())
                .replaceAll(",\"ratesBefore\":\\{}", "")
                .replaceAll(",\"shownHours\":[^,}]*", "")
                .replaceAll(",\"rate\":[^,}]*", "");
        assertThat(old).doesNotContain("ratesBefore", "shownHours", "\"rate\"");
        jdbc.sql("update calibration set past = ?::jsonb, past_packed = null")
                .param(old)
                .update();
        Past read = rows.kept(kept.row().id()).orElseThrow().past();
        assertThat(read.tasks()).hasSameSizeAs(kept.past().tasks());
        assertThat(read.ratesBefore()).isEmpty();
        assertThat(sanding().tasks()).isEqualTo(3);
    }

    @Test
    void anotherNameAsksForNothing() {
        SignedIn ada = people.owner();
        past.jobs(ada, 3, "1.5");
        edit(past.sanding(), "Sand fine", "0.1", ada);
        assertThat(rows.newest(9)).hasSize(1);
    }

    @Test
    void twoKindsCountedAsOneAreLearntTogetherAndTakenApartAgain() {
        SignedIn ada = people.owner();
        UUID byHand = past.handSanding();
        past.jobs(ada, 3, "1.5");
        JobRef job = past.handSandingJob(ada, SamplePast.FIRST.plusMonths(4), "40", 600);
        past.calibrated();
        double alone = upperEnd();
        assertThat(sanding().tasks()).isEqualTo(3);
        merging.merge(byHand, kinds.card(byHand).version(), past.sanding(), ada.personId());
        assertThat(rows.newest(1).get(0).why()).isEqualTo("\"Sand by hand\" counted as \"Sand to 150\"");
        assertThat(sanding().tasks()).as("the one before holds").isEqualTo(3);
        held.run();
        assertThat(sanding().tasks()).isEqualTo(4);
        assertThat(upperEnd())
                .as("10 h for 40 sf is learnt at the rate of sanding")
                .isGreaterThan(alone);
        assertThat(book.entries()).extracting(entry -> entry.kind().id()).doesNotContain(byHand);
        assertThat(book.history(past.sanding()).merged())
                .singleElement()
                .satisfies(one -> assertThat(one.name() + " " + one.tasks() + " " + one.by())
                        .isEqualTo("Sand by hand 1 Ada Fenn"));
        assertThat(jdbc.sql("select distinct task_kind_id from task where job_id = ? and name = 'Sand by hand'")
                        .param(job.id())
                        .query(UUID.class)
                        .list())
                .as("what was logged stays as it was")
                .containsExactly(byHand);
        merging.part(byHand, ada.personId());
        held.run();
        assertThat(sanding().tasks()).isEqualTo(3);
        assertThat(upperEnd()).isEqualTo(alone);
    }

    private void edit(UUID id, String name, String rate, SignedIn by) {
        TaskKindCard kind = kinds.card(id);
        desk.save(
                new SaveTaskKind(
                        id,
                        kind.version(),
                        name,
                        kind.stageId(),
                        kind.unit(),
                        UnitHours.of(rate),
                        kind.low(),
                        kind.high(),
                        kind.place(),
                        kind.hourClass(),
                        kind.drivers(),
                        "seen",
                        kind.caution(),
                        kind.cautionSource(),
                        kind.waits(),
                        Set.copyOf(kind.before())),
                by.personId());
    }

    @Test
    void whatWasJudgedIsKeptAfterARestart() {
        SignedIn ada = people.owner();
        past.jobs(ada, 4, "1.5");
        CalibrationRows.Kept kept = rows.kept(rows.current().orElseThrow()).orElseThrow();
        List<Judged> again = LookBack.record(reader.read(), kept.past(), kept.record(), step -> {});
        assertThat(again).hasSize(4);
        for (int n = 0; n < 4; n++) {
            assertThat(again.get(n))
                    .as("read from the database")
                    .isSameAs(kept.record().get(n));
        }
    }

    @Test
    void eachPredictionKnowsOnlyWhatWasClosedBefore() {
        SignedIn ada = people.owner();
        past.jobs(ada, 4, "1.5");
        List<Judged> record =
                rows.kept(rows.current().orElseThrow()).orElseThrow().record();
        assertThat(record).extracting(Judged::knownJobs).containsExactly(0, 1, 2, 3);
        assertThat(record.get(0).actual()).isCloseTo(7 * 1.5 + 0.5, within(0.01));
        assertThat(record.get(3).hours().median())
                .isGreaterThan(record.get(0).hours().median());
        assertThat(record.get(0).labourRate()).isEqualTo((BigDecimal) null);
    }
}
