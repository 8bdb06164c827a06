package org.tallywright.past.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.tallywright.calibration.SeenRange;

/** How ranges of what was built are put. */
class PastWordsTest {
    private static String said(int... hours) {
        return PastWords.spread(
                SeenRange.of(IntStream.of(hours).asDoubleStream().toArray()).orElseThrow(),
                h -> "%.0f h".formatted(h),
                "jobs");
    }

    @Test
    void namesTheTwoEndsThatFourInFiveLayBetween() {
        assertThat(said(8, 8, 8, 8, 8, 8, 8, 8, 8, 8)).isEqualTo("four times in five between 8 h and 8 h; 10 jobs");
    }

    @Test
    void givesTheLowestAndHighestOfFewAndNoRangeOfOne() {
        assertThat(said(8, 14, 9)).isEqualTo("from 8 h to 14 h; 3 jobs, too few for a range");
        assertThat(said(8)).isEqualTo("1 job, too few for a range");
    }
}
