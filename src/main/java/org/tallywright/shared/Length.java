package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A length in whole units of 3.125 micrometres, of which 1/64 inch is 127 and a tenth of a millimetre 32, so that both
 * are exact and sums of them stay so. Differences may be negative.
 */
public record Length(long units) implements Comparable<Length> {
    public static final Length ZERO = new Length(0);
    static final long SIXTY_FOURTH = 127;

    /** Units in an inch, and in a foot. */
    public static final long INCH = 64 * SIXTY_FOURTH;

    public static final long FOOT = 12 * INCH;

    static final long MILLIMETRE = 320;
    static final long METRE = 1000 * MILLIMETRE;

    /**
     * Reads {@code 31 5/8}, {@code 31-5/8"}, {@code 4' 3-7/8"}, {@code 12.5"}, {@code 803 mm}, {@code 80.3 cm} or
     * {@code 1.2 m}; from nothing up to 100 m.
     *
     * @param bare what a number without a unit means: inches or millimetres. A fraction always means inches.
     * @throws NotUnderstood with a sentence for the person who typed it
     */
    public static Length parse(String typed, Units bare) {
        return LengthReader.read(typed, bare, false);
    }

    /** As {@link #parse}, for sizes: above nothing. */
    public static Length parseSize(String typed, Units bare) {
        Length length = parse(typed, bare);
        if (length.units == 0) {
            throw new NotUnderstood("A size is more than nothing.");
        }
        return length;
    }

    /** As {@link #parse}, for a measure that may lie below its mark: {@code -1/8}. */
    public static Length parseSigned(String typed, Units bare) {
        return LengthReader.read(typed, bare, true);
    }

    /** The nearest unit, halves away from zero. */
    public static Length ofInches(BigDecimal inches) {
        return of(inches, INCH);
    }

    /** The nearest unit; exact for tenths of a millimetre. */
    public static Length ofMillimetres(BigDecimal millimetres) {
        return of(millimetres, MILLIMETRE);
    }

    public static Length ofFeet(BigDecimal feet) {
        return of(feet, FOOT);
    }

    public static Length ofSixtyFourths(long count) {
        return new Length(Math.multiplyExact(count, SIXTY_FOURTH));
    }

    static Length of(BigDecimal number, long unit) {
        return new Length(number.multiply(BigDecimal.valueOf(unit))
                .setScale(0, RoundingMode.HALF_UP)
                .longValueExact());
    }

    public Length plus(Length other) {
        return new Length(Math.addExact(units, other.units));
    }

    public Length minus(Length other) {
        return new Length(Math.subtractExact(units, other.units));
    }

    public Length times(int count) {
        return new Length(Math.multiplyExact(units, count));
    }

    public boolean isNegative() {
        return units < 0;
    }

    public boolean isZero() {
        return units == 0;
    }

    /** Inches to six places. */
    public BigDecimal inches() {
        return over(INCH, 6);
    }

    /** Feet to six places, for linear foot quantities. */
    public BigDecimal feet() {
        return over(FOOT, 6);
    }

    /** Exact: a unit is 0.003125 mm. */
    public BigDecimal millimetres() {
        return over(MILLIMETRE, 6);
    }

    /** To six places of a metre, that is a thousandth of a millimetre. */
    public BigDecimal metres() {
        return over(METRE, 6);
    }

    /** The area of a rectangle in square feet, rounded once to six places. */
    public BigDecimal squareFeet(Length across) {
        return area(across, FOOT);
    }

    /** The area of a rectangle in square metres, rounded once to six places. */
    public BigDecimal squareMetres(Length across) {
        return area(across, METRE);
    }

    /** The area in the shop's way of measuring, as a quantity of sf or m2. */
    public Quantity area(Length across, Units in) {
        return new Quantity(in == Units.METRIC ? squareMetres(across) : squareFeet(across));
    }

    /** The length in the shop's way of measuring, as a quantity of lf or lm. */
    public Quantity run(Units in) {
        return new Quantity(in == Units.METRIC ? metres() : feet());
    }

    private BigDecimal over(long unit, int places) {
        return BigDecimal.valueOf(units).divide(BigDecimal.valueOf(unit), places, RoundingMode.HALF_UP);
    }

    private BigDecimal area(Length across, long unit) {
        BigDecimal product = BigDecimal.valueOf(units).multiply(BigDecimal.valueOf(across.units));
        BigDecimal square = BigDecimal.valueOf(unit).multiply(BigDecimal.valueOf(unit));
        return product.divide(square, 6, RoundingMode.HALF_UP);
    }

    /**
     * As the shop writes it: {@code 4' 3 7/8"}, {@code 7/8"}, or {@code 803 mm}, {@code 803.5 mm}. A length that is
     * not a whole 64th (or tenth) is written in decimals behind an approximation sign, never silently rounded.
     */
    public String format(Units in) {
        return in == Units.METRIC ? LengthWriter.millimetres(this) : LengthWriter.feetAndInches(this);
    }

    /** As it stands in a box with mm behind it; inches keep their marks, which tell feet from inches. */
    public String formatInBox(Units in) {
        String whole = format(in);
        return in == Units.METRIC ? whole.replaceFirst(" mm$", "") : whole;
    }

    /** Inches only, as on a cut list: {@code 51 7/8"}. */
    public String formatInches() {
        return LengthWriter.inches(this);
    }

    @Override
    public int compareTo(Length other) {
        return Long.compare(units, other.units);
    }

    /** In inches, for logs and tests. Pages use {@link #format}. */
    @Override
    public String toString() {
        return formatInches();
    }
}
