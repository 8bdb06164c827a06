package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

class LabourRateTest {
    private static final LabourRate.Part OWNER =
            new LabourRate.Part(Ids.next(), "Ada Fenn", Percent.of("60"), Money.of("43.56"));
    private static final LabourRate.Part HELPER =
            new LabourRate.Part(Ids.next(), "Jonas Pell", Percent.of("40"), Money.of("27.94"));

    /** 0.6 x 43.56 + 0.4 x 27.94 = 37.312, rounded once. */
    @Test
    void mixesBurdenedRatesByShare() {
        assertThat(new LabourRate(null, List.of(OWNER, HELPER)).amount()).contains(Money.of("37.31"));
    }

    @Test
    void goesByHandWhereARateIsGiven() {
        assertThat(new LabourRate(Money.of("44"), List.of(OWNER)).amount()).contains(Money.of("44"));
    }

    @Test
    void hasNoRateWithoutAWage() {
        LabourRate.Part unpaid = new LabourRate.Part(Ids.next(), "Brannoc Tull", Percent.of("40"), null);

        LabourRate rate = new LabourRate(null, List.of(OWNER, unpaid));
        assertThat(rate.amount()).isEmpty();
        assertThat(rate.unpaid()).containsExactly("Brannoc Tull");
        assertThat(new LabourRate(null, List.of()).amount()).isEmpty();
    }
}
