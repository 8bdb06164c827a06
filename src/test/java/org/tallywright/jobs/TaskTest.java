package org.tallywright.jobs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;

class TaskTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 25);
    private static final UUID ADA = Ids.next();
    private static final KindFacts.Kind KIND =
            new KindFacts.Kind(Ids.next(), "Rip hardwood", Ids.next(), Unit.LF, UnitHours.of("0.015"));

    private static Task task(String quantity) {
        return new Task(Ids.next(), Ids.next(), KIND, TaskDetails.proposed(KIND.id(), null, Quantity.of(quantity)), 1);
    }

    @Test
    void takesNameStageAndRateFromItsKind() {
        Task task = task("62");
        assertThat(task.name()).isEqualTo("Rip hardwood");
        assertThat(task.stageId()).isEqualTo(KIND.stageId());
        // 62 x 0.015 h = 55.8 minutes.
        assertThat(task.estimated().minutes()).isEqualTo(56);
    }

    @Test
    void keepsWhatItReallyCameTo() {
        Task task = task("62");
        task.finish(DAY, ADA, Quantity.of(70), true);
        assertThat(task.isDoneWith(Quantity.of(70), true)).isTrue();
        assertThat(task.isDoneWith(Quantity.of(70), false)).isFalse();
        assertThat(task.estimated().minutes()).isEqualTo(56);
        task.reopen();
        assertThat(task.state()).isEqualTo(TaskState.STARTED);
        assertThat(task.quantityDone()).isNull();
    }

    @Test
    void doesNotStartTwiceOrAfterItsEnd() {
        Task task = task("62");
        task.start(DAY);
        assertThatThrownBy(() -> task.start(DAY)).isInstanceOf(Refused.class);
        task.drop(false);
        assertThatThrownBy(() -> task.finish(DAY, ADA, Quantity.ONE, true))
                .hasMessage("A task that is dropped cannot become done.");
    }

    @Test
    void refusesMoreHoursThanCanBeKept() {
        assertThatThrownBy(() -> new Task(
                        Ids.next(),
                        Ids.next(),
                        KIND,
                        new TaskDetails(
                                KIND.id(), null, null, "", Quantity.of(1_000_000), UnitHours.of("900"), null, null),
                        1))
                .isInstanceOf(Refused.class)
                .hasMessage("That comes to more hours than can be kept here.");
    }

    @Test
    void keepsItsKind() {
        Task task = task("62");
        TaskDetails other =
                new TaskDetails(Ids.next(), null, KIND.stageId(), "Rip", Quantity.ONE, KIND.unitHours(), null, null);
        assertThatThrownBy(() -> task.change(other)).isInstanceOf(Refused.class);
    }

    @Test
    void moveTheEndOfAWaitWithinReason() {
        Instant start = Instant.parse("2026-11-25T21:10:00Z");
        Wait wait = new Wait(Ids.next(), task("1"), new KindFacts.KindWait(1, "Clamps", 60), start, ADA);
        assertThat(wait.endsAt()).isEqualTo("2026-11-25T22:10:00Z");
        wait.push(start.plus(Duration.ofHours(24)));
        assertThat(wait.endsAt()).isEqualTo("2026-11-26T21:10:00Z");
        assertThatThrownBy(() -> wait.push(start)).hasMessage("A wait ends after it started.");
        assertThatThrownBy(() -> wait.push(start.plus(Duration.ofDays(366)))).isInstanceOf(Refused.class);
        wait.end(start.plusSeconds(60));
        assertThatThrownBy(() -> wait.push(start.plusSeconds(120))).hasMessage("This wait is over already.");
    }
}
