package org.tallywright.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Yield;

class YieldBookTest {
    private static final Yield STARTING = Yield.of(new BigDecimal("0.70"));
    private final UUID oak = Ids.next();

    @Test
    void answersWithTheStartingYieldBeforeThereIsAPast() {
        YieldBook.Expected expected = YieldBook.learn(List.of()).of(oak, STARTING);
        assertThat(expected.likely()).isBetween(new BigDecimal("0.66"), new BigDecimal("0.74"));
        assertThat(expected.low()).isLessThan(expected.likely());
        assertThat(expected.high()).isGreaterThan(expected.likely());
        assertThat(expected.jobs()).isZero();
        assertThat(expected.stillStarting().amount()).isEqualByComparingTo("100");
    }

    @Test
    void movesTowardsWhatJobsYielded() {
        YieldBook.Expected one = YieldBook.learn(past(1)).of(oak, STARTING);
        YieldBook.Expected many = YieldBook.learn(past(12)).of(oak, STARTING);
        assertThat(one.likely()).isLessThan(STARTING.amount());
        assertThat(many.likely()).isLessThan(one.likely()).isBetween(new BigDecimal("0.50"), new BigDecimal("0.56"));
        assertThat(many.high().subtract(many.low())).isLessThan(one.high().subtract(one.low()));
        assertThat(many.stillStarting()).isLessThan(one.stillStarting());
        assertThat(many.jobs()).isEqualTo(12);
    }

    /** Jobs that put 52 of 100 board feet into the work. */
    private List<YieldBook.Seen> past(int jobs) {
        List<YieldBook.Seen> past = new ArrayList<>();
        for (int i = 0; i < jobs; i++) {
            past.add(new YieldBook.Seen(
                    oak,
                    Ids.next(),
                    BigDecimal.valueOf(100),
                    BigDecimal.valueOf(52),
                    STARTING.amount(),
                    LocalDate.of(2026, 1, 5).plusWeeks(i)));
        }
        return past;
    }
}
