package org.tallywright.shared.jpa;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Length;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.Percent;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.ShopAccount;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;

class ColumnsTest {
    static Stream<Arguments> columns() {
        return Stream.of(
                Arguments.of(new MoneyColumn(), Money.of("-9,413.50"), "-9413.50"),
                Arguments.of(new UnitPriceColumn(), UnitPrice.of("0.0125"), "0.0125"),
                Arguments.of(new HoursColumn(), new Hours(150), "150"),
                Arguments.of(new LengthColumn(), new Length(-127), "-127"),
                Arguments.of(new QuantityColumn(), Quantity.of("1,250.5"), "1250.5"),
                Arguments.of(new NetQuantityColumn(), NetQuantity.of("92"), "92"),
                Arguments.of(new UnitHoursColumn(), UnitHours.of("0.014"), "0.01400"),
                Arguments.of(new PercentColumn(), Percent.of("16.5"), "16.5"),
                Arguments.of(new MarginColumn(), Margin.of("16"), "16"),
                Arguments.of(new YieldColumn(), Yield.of("85 %"), "0.85"),
                Arguments.of(new UnitColumn(), Unit.M2, "m2"),
                Arguments.of(new HourClassColumn(), HourClass.SUPPLY_RUN, "supply run"),
                Arguments.of(new ShopAccountColumn(), ShopAccount.LOST_BIDS, "lost bids"));
    }

    @ParameterizedTest
    @MethodSource("columns")
    <X, Y> void keepTheValue(AttributeConverter<X, Y> column, X value, String kept) {
        Y stored = column.convertToDatabaseColumn(value);
        assertThat(stored).hasToString(kept);
        assertThat(column.convertToEntityAttribute(stored)).isEqualTo(value);
    }

    @ParameterizedTest
    @MethodSource("columns")
    <X, Y> void keepNothingAsNull(AttributeConverter<X, Y> column) {
        assertThat(column.convertToDatabaseColumn(null)).isNull();
        assertThat(column.convertToEntityAttribute(null)).isNull();
    }

    @Test
    void applyByThemselves() {
        assertThat(columns().map(a -> a.get()[0].getClass()))
                .allMatch(c -> c.getAnnotation(Converter.class).autoApply());
    }
}
