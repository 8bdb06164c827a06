package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Markup and margin against published conversion tables. */
class MarkupMarginOutsideTest {
    static List<Checks.Row> rows() {
        return Checks.read("markup_margin.csv");
    }

    @ParameterizedTest
    @MethodSource("rows")
    void turnsOneIntoTheOther(Checks.Row row) {
        if (row.text("check").equals("to markup")) {
            Markup markup = Margin.of(row.number("percent")).toMarkup();
            assertThat(markup.percent().amount())
                    .isCloseTo(row.number("expected_percent"), within(row.number("tolerance")));
            assertThat(markup.toMargin()).isEqualTo(Margin.of(row.number("percent")));
            return;
        }
        Markup markup = Markup.of(row.number("percent"));
        Money cost = new Money(row.number("cost"));
        Money price = new Money(row.number("expected_price"));
        assertThat(markup.toMargin().percent().amount())
                .isCloseTo(row.number("expected_percent"), within(row.number("tolerance")));
        assertThat(markup.priceFrom(cost)).isEqualTo(price);
        assertThat(markup.toMargin().priceFrom(cost)).isEqualTo(price);
    }
}
