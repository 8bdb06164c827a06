package org.tallywright.costing;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.tallywright.AppTest;
import org.tallywright.costing.SampleCosts.Seat;
import org.tallywright.jobs.Closing;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;

/** The figures of one job against sums worked out by hand, see {@link SampleCosts}. */
@AppTest
class JobCostsSqlTest {
    @Autowired
    SampleCosts sample;

    @Autowired
    SampleJobs jobs;

    @Autowired
    JobCosts costs;

    @Autowired
    JobDesk desk;

    @Autowired
    Reviews reviews;

    private static BigDecimal money(String amount) {
        return new BigDecimal(amount);
    }

    @Test
    void addsUpWhatTheJobCost() {
        JobFigures figures = costs.figures(sample.worked().job().id());
        CostSums actual = figures.actual();
        assertThat(actual.minutes()).isEqualTo(425);
        assertThat(actual.labour()).isEqualByComparingTo("260.50");
        assertThat(actual.overhead()).isEqualByComparingTo("106.25");
        assertThat(actual.material()).isEqualByComparingTo("606.00");
        assertThat(actual.other()).isEqualByComparingTo("42.00");
        assertThat(actual.cost()).isEqualByComparingTo("1014.75");
        assertThat(actual.margin()).hasValueSatisfying(m -> assertThat(m).isEqualByComparingTo("185.25"));
        assertThat(actual.marginPercent()).contains(money("15.4"));
        assertThat(actual.earnedPerHour()).contains(money("83.86"));
        assertThat(figures.unpricedMinutes()).isEqualTo(20);
    }

    @Test
    void takesThePlanFromTheAcceptedBid() {
        JobFigures figures = costs.figures(sample.sold().job().id());
        CostSums planned = Objects.requireNonNull(figures.planned());
        assertThat(figures.basis()).isEqualTo(JobFigures.Basis.BID);
        assertThat(planned.cost()).isEqualByComparingTo("943.50");
        assertThat(planned.margin()).hasValueSatisfying(m -> assertThat(m).isEqualByComparingTo("256.50"));
        assertThat(planned.earnedPerHour()).contains(money("104.62"));
    }

    @Test
    void saysTheSameInOneQuery() {
        Seat seat = sample.worked();
        CostSums all = costs.figures(seat.job().id()).actual();
        CostSums short_ = reviews.standing(seat.job().id()).sums().orElseThrow();
        assertThat(short_.minutes()).isEqualTo(all.minutes());
        assertThat(short_.labour()).isEqualByComparingTo(all.labour());
        assertThat(short_.overhead()).isEqualByComparingTo(all.overhead());
        assertThat(short_.material()).isEqualByComparingTo(all.material());
        assertThat(short_.other()).isEqualByComparingTo(all.other());
    }

    @Test
    void splitsTheDifferenceToTheCent() {
        Seat seat = sample.worked();
        close(seat);
        JobFigures closed = costs.figures(seat.job().id());
        assertThat(amount(closed, Cause.QUANTITY)).isEqualByComparingTo("-74.80");
        assertThat(amount(closed, Cause.EFFICIENCY)).isEqualByComparingTo("-13.20");
        assertThat(amount(closed, Cause.REWORK)).isEqualByComparingTo("22.00");
        assertThat(amount(closed, Cause.RATE)).isEqualByComparingTo("-32.50");
        assertThat(amount(closed, Cause.LOOSE_HOURS)).isEqualByComparingTo("73.00");
        assertThat(amount(closed, Cause.OVERHEAD)).isEqualByComparingTo("8.75");
        assertThat(amount(closed, Cause.MATERIAL_QUANTITY)).isEqualByComparingTo("50.00");
        assertThat(amount(closed, Cause.MATERIAL_YIELD)).isEqualByComparingTo("-50.00");
        assertThat(amount(closed, Cause.MATERIAL_PRICE)).isEqualByComparingTo("81.00");
        assertThat(amount(closed, Cause.LOOSE_MATERIAL)).isEqualByComparingTo("5.00");
        assertThat(amount(closed, Cause.OTHER)).isEqualByComparingTo("2.00");
        BigDecimal sum = closed.split().stream().map(SplitLine::amount).reduce(BigDecimal.ZERO, BigDecimal::add);
        assertThat(sum).isEqualByComparingTo("71.25");
        assertThat(closed.split()).extracting(SplitLine::cause).doesNotContain(Cause.ROUNDING);
    }

    /** Material of a running job is judged by its price alone: 601 - 50 x 10 - 20. */
    @Test
    void doesNotJudgeQuantityAndYieldBeforeTheEnd() {
        JobFigures running = costs.figures(sample.worked().job().id());
        assertThat(amount(running, Cause.MATERIAL_PRICE)).isEqualByComparingTo("81.00");
        assertThat(running.split())
                .extracting(SplitLine::cause)
                .doesNotContain(Cause.MATERIAL_QUANTITY, Cause.MATERIAL_YIELD);
        BigDecimal sum = running.split().stream().map(SplitLine::amount).reduce(BigDecimal.ZERO, BigDecimal::add);
        assertThat(sum).isEqualByComparingTo("71.25");
    }

    private static BigDecimal amount(JobFigures figures, Cause cause) {
        return figures.split().stream()
                .filter(line -> line.cause() == cause)
                .map(SplitLine::amount)
                .findFirst()
                .orElse(BigDecimal.ZERO);
    }

    @Test
    void namesHoursOnNoEstimateLine() {
        Seat seat = sample.worked();
        assertThat(costs.figures(seat.job().id()).loose())
                .extracting(loose -> loose.name() + "/" + loose.hourClass() + "/" + loose.minutes())
                .containsExactly("Travel/travel/60", "/supply run/45", "/office/20");
    }

    @Test
    void listsReworkWithItsReason() {
        assertThat(costs.figures(sample.worked().job().id()).again())
                .extracting(again -> again.task() + " " + again.minutes() + " " + again.reason())
                .containsExactly("Glue up panel 30 Panel came out of the clamps twisted");
    }

    @Test
    void comparesWithTheWorkingSumWhereNothingIsAccepted() {
        Seat seat = sample.sold();
        JobRef job = jobs.windowSeat(seat.owner());
        JobFigures figures = costs.figures(job.id());
        assertThat(figures.basis()).isEqualTo(JobFigures.Basis.ESTIMATE);
        assertThat(figures.plannedMinutes()).isEqualTo(390);
        assertThat(figures.actual().price()).isNull();
        assertThat(figures.slack()).isNull();
        assertThat(figures.loose()).isEmpty();
    }

    @Test
    void freezesTheFiguresWhenTheJobCloses() {
        Seat seat = sample.worked();
        JobRef job = seat.job();
        close(seat);
        JobFigures live = costs.figures(job.id());
        assertThat(reviews.of(job.id())).hasSize(1);
        UUID review = reviews.of(job.id()).get(0).id();
        JobFigures frozen = reviews.figures(review);
        assertThat(frozen.closed()).isTrue();
        assertThat(frozen)
                .usingRecursiveComparison()
                .withComparatorForType(BigDecimal::compareTo, BigDecimal.class)
                .isEqualTo(live);
        assertThat(reviews.standing(job.id()).sums())
                .hasValueSatisfying(sums -> assertThat(sums.cost()).isEqualByComparingTo("1014.75"));
    }

    private void close(Seat seat) {
        desk.close(
                seat.job().id(),
                new Closing(Map.of(seat.travel(), Closing.TaskAnswer.DONE), true, true),
                seat.owner().personId());
    }
}
