package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Weekly overtime against the worked examples of the federal rules. */
class OvertimeOutsideTest {
    static List<Checks.Row> weeks() {
        return Checks.read("overtime.csv");
    }

    @ParameterizedTest
    @MethodSource("weeks")
    void paysHalfOnTopOverForty(Checks.Row row) {
        List<Overtime.Stretch> week = Arrays.stream(row.text("hours_at_rate").split(" "))
                .map(OvertimeOutsideTest::stretch)
                .toList();
        Money bonus = new Money(row.number("bonus"));
        BigDecimal found = switch (row.text("check")) {
            case "pay" -> Overtime.pay(week, bonus).amount();
            case "rate" -> Overtime.regularRate(week, bonus);
            case "premium" -> Overtime.premium(week, bonus).amount();
            default -> throw new IllegalStateException(row.toString());
        };
        assertThat(found).isCloseTo(row.number("expected"), within(row.number("tolerance")));
    }

    private static Overtime.Stretch stretch(String words) {
        String[] n = words.split(":");
        return new Overtime.Stretch(Hours.of(new BigDecimal(n[0])), new BigDecimal(n[1]));
    }

    /** The rule that a shop starts with gives the same pay as the worked examples. */
    @ParameterizedTest
    @MethodSource("weeks")
    void startsWithTheFederalRule(Checks.Row row) {
        List<Overtime.Stretch> week = Arrays.stream(row.text("hours_at_rate").split(" "))
                .map(OvertimeOutsideTest::stretch)
                .toList();
        if (row.text("check").equals("pay") && row.number("bonus").signum() == 0) {
            Hours over = OvertimeRule.FEDERAL
                    .split(week.stream().map(Overtime.Stretch::hours).toList())
                    .overtime();
            Money pay = Overtime.straightPay(week).plus(OvertimeRule.FEDERAL.premium(week, over));
            assertThat(pay.amount()).isCloseTo(row.number("expected"), within(row.number("tolerance")));
        }
    }

    @Test
    void countsAnHourOfOvertimeOnceWhereTheDayCountsToo() {
        OvertimeRule both = new OvertimeRule(Overtime.FORTY, new Hours(480), new BigDecimal(50));
        List<Hours> long4 = List.of(new Hours(660), new Hours(660), new Hours(660), new Hours(660));
        assertThat(both.split(long4).overtime()).isEqualTo(new Hours(4 * 180));
        List<Hours> six =
                List.of(new Hours(600), new Hours(480), new Hours(480), new Hours(480), new Hours(480), new Hours(480));
        assertThat(both.split(six).overtime()).isEqualTo(new Hours(120 + 480));
        assertThat(both.inWords()).isEqualTo("over 8 h a day or 40 h a week");
        OvertimeRule none = new OvertimeRule(null, null, BigDecimal.ZERO);
        assertThat(none.split(six).overtime()).isEqualTo(Hours.ZERO);
        assertThat(none.inWords()).isEmpty();
    }

    @Test
    void splitsAWeekAtForty() {
        assertThat(Overtime.ofWeek(new Hours(46 * 60))).isEqualTo(new Overtime(new Hours(2400), new Hours(360)));
        assertThat(Overtime.ofWeek(new Hours(2400))).isEqualTo(new Overtime(new Hours(2400), Hours.ZERO));
        assertThat(Overtime.ofWeek(Hours.ZERO)).isEqualTo(new Overtime(Hours.ZERO, Hours.ZERO));
        assertThat(Overtime.pay(List.of(), Money.ZERO)).isEqualTo(Money.ZERO);
    }
}
