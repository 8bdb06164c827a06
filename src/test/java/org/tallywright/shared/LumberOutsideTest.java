package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Board feet, surface measure, lumber sizes and purchase quantities against published figures. */
class LumberOutsideTest {
    static List<Checks.Row> boardFeet() {
        return Checks.read("board_feet.csv");
    }

    static List<Checks.Row> sizes() {
        return Checks.read("lumber_sizes.csv");
    }

    static List<Checks.Row> netAndGross() {
        return Checks.read("net_and_gross.csv");
    }

    @ParameterizedTest
    @MethodSource("boardFeet")
    void measuresBoards(Checks.Row row) {
        Length width = Length.ofInches(row.number("width_in"));
        BigDecimal last = row.number("length_ft_or_bf");
        BigDecimal found = switch (row.text("check")) {
            case "of" -> bothWays(thickness(row), width, Length.ofFeet(last));
            case "tally" ->
                BoardFeet.tally(thickness(row), width, Length.ofFeet(last)).amount();
            case "surface" -> BigDecimal.valueOf(BoardFeet.surfaceMeasure(width, Length.ofFeet(last)));
            case "length" ->
                BoardFeet.lengthOf(new Quantity(last), thickness(row), width).feet();
            default -> throw new IllegalStateException(row.toString());
        };
        assertThat(found).isCloseTo(row.number("expected"), within(row.number("tolerance")));
        if (row.text("check").equals("tally")) {
            BigDecimal face = BigDecimal.valueOf(width.units())
                    .multiply(BigDecimal.valueOf(Length.ofFeet(last).units()));
            assertThat(BoardFeet.tally(thickness(row), face))
                    .as("by its face")
                    .isCloseTo(row.number("expected"), within(row.number("tolerance")));
        }
    }

    /** By its sides, and by the volume they make. */
    private static BigDecimal bothWays(Length thickness, Length width, Length length) {
        BigDecimal boardFeet = BoardFeet.of(thickness, width, length).amount();
        BigDecimal cubicFeet = BigDecimal.valueOf(thickness.units())
                .multiply(BigDecimal.valueOf(width.units()))
                .multiply(BigDecimal.valueOf(length.units()))
                .divide(BigDecimal.valueOf(Length.FOOT).pow(3), MathContext.DECIMAL64);
        assertThat(BoardFeet.ofCubicFeet(cubicFeet)).isCloseTo(boardFeet, within(new BigDecimal("0.0001")));
        return boardFeet;
    }

    private static Length thickness(Checks.Row row) {
        return Length.ofInches(row.number("thickness_in"));
    }

    @ParameterizedTest
    @MethodSource("sizes")
    void knowsWhatANamedSizeMeasures(Checks.Row row) {
        ReportedSize size = ReportedSize.find(row.text("name")).orElseThrow();
        assertThat(size.dressedThickness()).isEqualTo(inches(row.text("dressed_thickness_in")));
        assertThat(size.oneFace()).isEqualTo(inches(row.text("one_face_in")));
        assertThat(size.dressedWidth()).isEqualTo(inches(row.text("dressed_width_in")));
        String[] nominal = row.text("nominal_in").split("x");
        assertThat(size.thickness()).isEqualTo(inches(nominal[0]));
        assertThat(size.width()).isEqualTo(nominal.length == 1 ? null : inches(nominal[1]));
    }

    @Test
    void knowsNoOtherSizes() {
        assertThat(ReportedSize.ALL).hasSameSizeAs(sizes());
        assertThat(ReportedSize.find("2 X 4")).isEqualTo(ReportedSize.find("2x4"));
        assertThat(ReportedSize.find("3x7")).isEmpty();
    }

    private static @Nullable Length inches(String words) {
        return words.isEmpty() ? null : Length.parse(words, Units.IMPERIAL);
    }

    @ParameterizedTest
    @MethodSource("netAndGross")
    void turnsNetIntoGrossAndWholeUnits(Checks.Row row) {
        Quantity quantity = new Quantity(row.number("quantity"));
        BigDecimal by = row.number("yield_or_size");
        Quantity found = switch (row.text("check")) {
            case "net" -> new GrossQuantity(quantity).netAt(new Yield(by)).quantity();
            case "gross" -> new NetQuantity(quantity).grossAt(new Yield(by)).quantity();
            case "whole units" -> new GrossQuantity(quantity).wholeUnits(new Quantity(by));
            default -> throw new IllegalStateException(row.toString());
        };
        assertThat(found.amount()).isCloseTo(row.number("expected"), within(row.number("tolerance")));
    }
}
