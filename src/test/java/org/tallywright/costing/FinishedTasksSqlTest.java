package org.tallywright.costing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.costing.SampleCosts.Seat;
import org.tallywright.jobs.Closing;
import org.tallywright.jobs.JobDesk;

/** What a closed job hands on for learning, and that what it froze is not written over. */
@AppTest
class FinishedTasksSqlTest {
    @Autowired
    SampleCosts sample;

    @Autowired
    FinishedTasks finished;

    @Autowired
    JobDesk desk;

    @Autowired
    JdbcClient jdbc;

    private Seat closed() {
        Seat seat = sample.worked();
        desk.close(
                seat.job().id(),
                new Closing(Map.of(seat.travel(), Closing.TaskAnswer.DONE), true, true),
                seat.owner().personId());
        return seat;
    }

    @Test
    void handsOnHoursInRateClassesAgainstTheStartingRate() {
        Seat seat = closed();
        jdbc.sql("update site set occupied = true, stairs = true").update();
        jdbc.sql("update task set unit_hours = 0.5 where id = ?")
                .param(seat.rip())
                .update();
        List<FinishedTask> tasks = finished.ofJob(seat.job().id());
        assertThat(tasks).extracting(FinishedTask::taskId).containsExactly(seat.rip(), seat.glue(), seat.travel());
        FinishedTask rip = tasks.get(0);
        assertThat(rip.doneOn()).isEqualTo(SampleCosts.EARLY);
        assertThat(rip.quantity()).isEqualByComparingTo("120");
        assertThat(rip.quantityConfirmed()).isTrue();
        assertThat(rip.estimatedHours()).isEqualByComparingTo(new BigDecimal("1.8"));
        assertThat(rip.minutes()).isEqualTo(120);
        assertThat(rip.conditions()).containsExactlyInAnyOrder("occupied", "stairs");
        // The half hour of rework stays out.
        assertThat(tasks.get(1).shares()).isEqualTo(Map.of(seat.helper().personId(), 150));
        // Answered at closing: nobody counted.
        assertThat(tasks.get(2).quantityConfirmed()).isFalse();
        assertThat(finished.ofClosedJobs()).isEqualTo(tasks);
    }

    @Test
    void leavesOutTasksNobodyLoggedOnAndDroppedOnes() {
        Seat seat = closed();
        assertThat(finished.ofJob(seat.job().id()))
                .extracting(FinishedTask::taskId)
                .doesNotContain(seat.coat());
        sample.inTrail(
                seat.owner(),
                () -> jdbc.sql("delete from time_entry where task_id = ?")
                        .param(seat.travel())
                        .update());
        assertThat(finished.ofJob(seat.job().id()))
                .extracting(FinishedTask::taskId)
                .containsExactly(seat.rip(), seat.glue());
    }

    @Test
    void givesNothingOfAJobThatRuns() {
        sample.worked();
        assertThat(finished.ofClosedJobs()).isEmpty();
    }

    @Test
    void keepsTheFiguresOfAReviewFromBeingChanged() {
        Seat seat = closed();
        assertThatThrownBy(() -> sample.inTrail(
                        seat.owner(),
                        () -> jdbc.sql("update review set figures = '{}'").update()))
                .hasMessageContaining("the figures of a review do not change");
        assertThatThrownBy(
                        () -> sample.inTrail(seat.owner(), () -> jdbc.sql("""
                                        insert into review (id, job_id, closing, closed_on, closed_at, closed_by, figures, version)
                                        select gen_random_uuid(), job_id, closing, closed_on, closed_at, closed_by, figures, 0
                                        from review""").update()))
                .hasMessageContaining("review_one_per_closing");
    }
}
