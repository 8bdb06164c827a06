package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTest {
    @ParameterizedTest
    @CsvSource(delimiter = ';', textBlock = """
            12;12
            12.5;12.5
            12,5;12.5
            1,250;1250
            0,125;0.125
            12 1/2;12.5
            12\u00bd;12.5
            1/3;0.3333
            0;0
            100.0000;100
            """)
    void readsWhatPeopleType(String typed, String amount) {
        assertThat(Quantity.of(typed)).hasToString(amount);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            -1        | A quantity cannot be negative.
            many      | "many" is not a quantity; write it like 12 or 12.5.
            1000000.1 | "1000000.1" is more than can be kept here.
            """)
    void refusesInWords(String typed, String sentence) {
        assertThatExceptionOfType(NotUnderstood.class)
                .isThrownBy(() -> Quantity.of(typed))
                .withMessage(sentence);
    }

    @Test
    void turnsIntoTheOtherUnitAndNotIntoAThird() {
        assertThat(Quantity.of("10").convert(Unit.LF, Unit.LM)).isEqualTo(Quantity.of("3.048"));
        assertThat(Quantity.of("3.048").convert(Unit.LM, Unit.LF)).isEqualTo(Quantity.of("10"));
        assertThat(Quantity.of("4").convert(Unit.EACH, Unit.EACH)).isEqualTo(Quantity.of("4"));
        assertThatExceptionOfType(Refused.class)
                .isThrownBy(() -> Quantity.of("4").convert(Unit.LF, Unit.SF))
                .withMessage("Cannot turn lf into sf.");
    }

    @Test
    void readsUnitsByCodeAndUsualSpelling() {
        for (Unit unit : Unit.values()) {
            assertThat(Unit.of(unit.code())).isEqualTo(unit);
            assertThat(unit.counterpart().counterpart()).isEqualTo(unit);
            assertThat(unit.in(Units.METRIC).isMetric()).isEqualTo(unit.isMeasured());
        }
        assertThat(Unit.of("sq ft")).isEqualTo(Unit.SF);
        assertThat(Unit.of("coat-sf")).isEqualTo(Unit.CSF);
        assertThatExceptionOfType(NotUnderstood.class).isThrownBy(() -> Unit.of("furlong"));
    }

    @Test
    void estimatesWholeMinutesRoundedHalfUp() {
        assertThat(UnitHours.of("0.014").times(Quantity.of("100"))).isEqualTo(new Hours(84));
        assertThat(UnitHours.of("0.025").times(Quantity.of("1"))).isEqualTo(new Hours(2)); // 1.5 minutes
        assertThat(UnitHours.of("0.024").times(Quantity.of("1"))).isEqualTo(new Hours(1)); // 1.44 minutes
        assertThat(UnitHours.of("2").times(Quantity.ZERO)).isEqualTo(Hours.ZERO);
        assertThatExceptionOfType(Refused.class)
                .isThrownBy(() -> UnitHours.of("1000").times(Quantity.of("1000000")));
    }

    @Test
    void readsHoursPerUnitInHoursOrMinutes() {
        assertThat(UnitHours.of("1.5 h")).isEqualTo(UnitHours.of("1,5"));
        assertThat(UnitHours.of("3 min")).isEqualTo(UnitHours.of("0.05"));
        assertThat(UnitHours.of("0.000015")).isEqualTo(UnitHours.of("0.00002"));
        assertThat(UnitHours.of("0.0140")).hasToString("0.014");
        assertThat(UnitHours.of("2")).hasToString("2.00");
        for (String typed : new String[] {"-1", "0", "0.000001", "1000.1", "soon"}) {
            assertThatExceptionOfType(NotUnderstood.class).isThrownBy(() -> UnitHours.of(typed));
        }
    }

    @Test
    void observesHoursPerUnit() {
        assertThat(UnitHours.observed(new Hours(90), Quantity.of("12"))).isEqualTo(UnitHours.of("0.125"));
        assertThatExceptionOfType(Refused.class).isThrownBy(() -> UnitHours.observed(new Hours(90), Quantity.ZERO));
    }

    @Test
    void keepsTheHoursWhenTheUnitChanges() {
        UnitHours perFoot = UnitHours.of("0.3048");
        assertThat(perFoot.convert(Unit.LF, Unit.LM)).isEqualTo(UnitHours.of("1"));
        assertThat(UnitHours.of("1").convert(Unit.LM, Unit.LF)).isEqualTo(perFoot);
    }

    @Test
    void buysWholeUnitsUp() {
        assertThat(NetQuantity.of("92").grossAt(Yield.of("0.70"))).hasToString("131.4286");
        assertThat(NetQuantity.of("92").grossAt(Yield.of("70 %")).wholeUnits()).isEqualTo(Quantity.of("132"));
        assertThat(NetQuantity.of("8.5").grossAt(Yield.of("85")).wholeUnits()).isEqualTo(Quantity.of("10"));
        assertThat(GrossQuantity.of("33").wholeUnits(Quantity.of("16"))).isEqualTo(Quantity.of("3"));
    }

    @Test
    void yieldsLieAboveNothingAndUpToAll() {
        assertThatExceptionOfType(NotUnderstood.class).isThrownBy(() -> Yield.of("0"));
        assertThatExceptionOfType(NotUnderstood.class).isThrownBy(() -> Yield.of("101"));
        assertThat(Yield.of("1")).isEqualTo(Yield.ALL);
        assertThat(Yield.observed(NetQuantity.of("93.1"), GrossQuantity.of("137")))
                .hasToString("0.6796");
        assertThatExceptionOfType(Refused.class)
                .isThrownBy(() -> Yield.observed(NetQuantity.of("5"), GrossQuantity.of("4")));
    }

    @Test
    void percentagesGoFromNothingToAThousand() {
        assertThat(Percent.of("16,5 %").fraction()).isEqualByComparingTo(new BigDecimal("0.165"));
        assertThat(Percent.of("16.625")).hasToString("16.63");
        assertThatExceptionOfType(NotUnderstood.class).isThrownBy(() -> Percent.of("-1"));
        assertThatExceptionOfType(NotUnderstood.class).isThrownBy(() -> Percent.of("1001"));
        assertThatExceptionOfType(NotUnderstood.class).isThrownBy(() -> Percent.of("1.2345"));
    }

    @Test
    void aMarginStaysBelowAHundred() {
        assertThatExceptionOfType(NotUnderstood.class).isThrownBy(() -> Margin.of("100"));
        assertThat(Markup.of("100").toMargin()).isEqualTo(Margin.of("50"));
        assertThat(Margin.between(Money.of("800"), Money.of("1000"))).isEqualTo(Margin.of("20"));
        assertThat(Margin.between(Money.of("1100"), Money.of("1000")).percent())
                .isEqualTo(new Percent(new BigDecimal("-10")));
        assertThat(Markup.between(Money.of("800"), Money.of("1000"))).isEqualTo(Markup.of("25"));
        assertThatExceptionOfType(Refused.class).isThrownBy(() -> Margin.between(Money.of("800"), Money.ZERO));
    }
}
