package org.tallywright.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.tallywright.calibration.engine.Observation;

class TrendTest {
    private static List<Observation> tasks(double... estimateAndRatio) {
        List<Observation> all = new ArrayList<>();
        for (int i = 0; i < estimateAndRatio.length; i += 2) {
            double estimate = estimateAndRatio[i];
            all.add(new Observation(
                    "t" + i,
                    "j",
                    "k",
                    List.of(),
                    1,
                    estimate,
                    estimate * estimateAndRatio[i + 1],
                    LocalDate.EPOCH,
                    Set.of()));
        }
        return all;
    }

    @Test
    void comparesSmallTasksWithLargeOnes() {
        Trend trend = Trend.bySize(tasks(1, 1.2, 1, 1.25, 1, 1.3, 1, 1.25, 8, 1, 8, 0.96, 8, 1.04))
                .orElseThrow();
        assertThat(trend.later()).isEqualTo(4);
        assertThat(trend.tasks()).isEqualTo(7);
        assertThat(trend.ratio()).isCloseTo(1.25, within(0.01));
        assertThat(trend.low()).isGreaterThan(1);
    }

    @Test
    void tasksOfOneSizeHaveNoSmallerHalf() {
        assertThat(Trend.bySize(tasks(2, 1, 2, 1.5, 2, 1, 2, 1.5, 2, 1, 2, 1.5)))
                .isEmpty();
        assertThat(Trend.bySize(tasks(1, 1, 1, 1, 8, 1, 8, 1, 8, 1, 8, 1)))
                .as("two small ones are too few")
                .isEmpty();
    }

    @Test
    void saysNothingBelowSixTasks() {
        assertThat(Trend.bySize(tasks(1, 1, 2, 1, 3, 1, 4, 1, 5, 1))).isEmpty();
        assertThat(Trend.of(tasks(1, 1, 2, 1, 3, 1, 4, 1, 5, 1))).isEmpty();
    }
}
