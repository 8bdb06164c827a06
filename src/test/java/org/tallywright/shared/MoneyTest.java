package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MoneyTest {
    @ParameterizedTest
    @CsvSource(delimiter = ';', textBlock = """
            9,413.50;9413.50
            $9,413.50;9413.50
            9413.5;9413.50
            9 413,50;9413.50
            9\u202f413,50;9413.50
            9.413,50;9413.50
            9'413.50;9413.50
            1.234.567;1234567.00
            9,413;9413.00
            9,41;9.41
            0,5;0.50
            9413.;9413.00
            .5;0.50
            -12;-12.00
            \u221212;-12.00
            (12.00);-12.00
            -$5;-5.00
            $-5;-5.00
            \u20ac 5;5.00
            5 \u20ac;5.00
            1.500;1.50
            """)
    void readsWhatPeopleType(String typed, BigDecimal amount) {
        assertThat(Money.of(typed).amount()).isEqualTo(amount);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            9.413       | "9.413" has more than two places; an amount goes to the cent.
            1,23,456    | "1,23,456" is not an amount; write it like 9,413.50.
            twelve      | "twelve" is not an amount; write it like 9,413.50.
            -(5)        | "-(5)" is not an amount; write it like 9,413.50.
            99999999999 | "99999999999" is more than can be kept here.
            ''          | Write an amount, such as 9,413.50.
            """)
    void refusesInWords(String typed, String sentence) {
        assertThatExceptionOfType(NotUnderstood.class)
                .isThrownBy(() -> Money.of(typed))
                .withMessage(sentence);
    }

    @Test
    void roundsHalfToEven() {
        assertThat(new Money(new BigDecimal("0.125"))).isEqualTo(Money.of("0.12"));
        assertThat(new Money(new BigDecimal("0.135"))).isEqualTo(Money.of("0.14"));
        assertThat(Money.of("33.33").times(new BigDecimal("0.5"))).isEqualTo(Money.of("16.66"));
    }

    @Test
    void isEqualWhateverTheScaleItCameIn() {
        assertThat(Money.of(new BigDecimal("5"))).isEqualTo(Money.of(new BigDecimal("5.0000")));
    }

    @Test
    void splitsWithoutLosingACent() {
        assertThat(Money.of("100.00").allocate(1, 1, 1))
                .containsExactly(Money.of("33.34"), Money.of("33.33"), Money.of("33.33"));
        assertThat(Money.of("-0.05").allocate(1, 0, 1))
                .containsExactly(Money.of("-0.03"), Money.ZERO, Money.of("-0.02"));
        assertThat(Money.of("10.00").allocate(1, 5))
                .as("the share that lost most gets the cent")
                .containsExactly(Money.of("1.67"), Money.of("8.33"));
    }

    @Test
    void refusesWeightsThatMeanNothing() {
        assertThatIllegalArgumentException().isThrownBy(() -> Money.of("1").allocate(0, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> Money.of("1").allocate(2, -1));
    }

    @Test
    void isWrittenAsTheShopWritesIt() {
        Money money = Money.of("-9413");
        assertThat(MoneyFormat.DEFAULT.format(money)).isEqualTo("-$9,413.00");
        assertThat(new MoneyFormat("kr", false, ',', '.').format(money)).isEqualTo("-9.413,00\u00a0kr");
        assertThat(new MoneyFormat("CHF", true, '.', '\'').format(money)).isEqualTo("-CHF\u00a09'413.00");
        assertThat(new MoneyFormat("", true, '.', ',').format(money)).isEqualTo("-9,413.00");
        assertThat(MoneyFormat.DEFAULT.format(UnitPrice.of("0.0125"))).isEqualTo("$0.0125");
        assertThat(MoneyFormat.DEFAULT.format(UnitPrice.of("13.4"))).isEqualTo("$13.40");
    }

    @Test
    void roundsAPriceTimesHoursOnce() {
        assertThat(UnitPrice.of("44").times(new Hours(8578))).isEqualTo(Money.of("6290.53"));
        assertThat(UnitPrice.of("10").times(new Hours(1))).isEqualTo(Money.of("0.17"));
        assertThat(UnitPrice.of("4.35").times(Quantity.of("132"))).isEqualTo(Money.of("574.20"));
    }

    @Test
    void refusesWhatNoColumnHolds() {
        assertThatExceptionOfType(Refused.class)
                .isThrownBy(() -> UnitPrice.of("9999999999").times(Quantity.of("2")));
        assertThat(Money.of("9999999999.99").isPositive()).isTrue();
    }

    @Test
    void sums() {
        assertThat(Money.sum(List.of(Money.of("1.10"), Money.of("2.20")))).isEqualTo(Money.of("3.30"));
        assertThat(Money.sum(List.of())).isEqualTo(Money.ZERO);
    }
}
