package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Board feet: 144 cubic inches of nominal, rough sizes. Source: the board-foot rule of the American Softwood Lumber
 * Standard (PS 20) and of the hardwood grading rules, as restated in the works named beside the tests.
 */
public final class BoardFeet {
    private static final BigDecimal UNITS =
            BigDecimal.valueOf(144).multiply(BigDecimal.valueOf(Length.INCH).pow(3));
    private static final BigDecimal IN_A_CUBIC_FOOT = BigDecimal.valueOf(12);
    private static final Length ONE_INCH = new Length(Length.INCH);

    private BoardFeet() {}

    /** Thickness x width x length / 144 in inches, as given. */
    public static Quantity of(Length thickness, Length width, Length length) {
        BigDecimal volume = BigDecimal.valueOf(thickness.units())
                .multiply(BigDecimal.valueOf(width.units()))
                .multiply(BigDecimal.valueOf(length.units()));
        return new Quantity(volume.divide(UNITS, 10, RoundingMode.HALF_UP));
    }

    /** As {@link #of}, with stock thinner than 1 inch counted as 1 inch. Common practice; check the rules bought by. */
    public static Quantity tally(Length thickness, Length width, Length length) {
        return of(thickness.compareTo(ONE_INCH) < 0 ? ONE_INCH : thickness, width, length);
    }

    /** As {@link #tally}, of a face of so many square units; not rounded to what a quantity can be. */
    public static BigDecimal tally(Length thickness, BigDecimal face) {
        long thick = Math.max(ONE_INCH.units(), thickness.units());
        return face.multiply(BigDecimal.valueOf(thick)).divide(UNITS, MathContext.DECIMAL64);
    }

    /** Of solid wood, as given: a board foot is a twelfth of a cubic foot. */
    public static BigDecimal ofCubicFeet(BigDecimal cubicFeet) {
        return cubicFeet.multiply(IN_A_CUBIC_FOOT);
    }

    /** Width in inches x length in feet / 12, to the nearest whole square foot; an exact half goes up. */
    public static int surfaceMeasure(Length width, Length length) {
        return width.squareFeet(length).setScale(0, RoundingMode.HALF_UP).intValueExact();
    }

    /** Running length that holds so many board feet at a nominal thickness and width. */
    public static Length lengthOf(Quantity boardFeet, Length thickness, Length width) {
        BigDecimal section = BigDecimal.valueOf(thickness.units()).multiply(BigDecimal.valueOf(width.units()));
        if (section.signum() <= 0) {
            throw new Refused("width", "A board needs a thickness and a width.");
        }
        return new Length(boardFeet
                .amount()
                .multiply(UNITS)
                .divide(section, 0, RoundingMode.HALF_UP)
                .longValueExact());
    }
}
