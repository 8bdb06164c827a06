package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;

/** What a quantity is counted in; screens, CSV and code use the same codes. */
public enum Unit {
    EACH("each", "each", false),
    LF("lf", "linear foot", false),
    SF("sf", "square foot", false),
    BF("bf", "board foot", false),
    SHEET("sheet", "sheet", false),
    JOINT("joint", "joint", false),
    PANEL("panel", "panel", false),
    PART("part", "part", false),
    CSF("csf", "coat square foot", false),
    TRIP("trip", "trip", false),
    VISIT("visit", "visit", false),
    JOB("job", "job", false),
    LM("lm", "linear metre", true),
    M2("m2", "square metre", true),
    M3("m3", "cubic metre", true),
    CSM("csm", "coat square metre", true);

    // One inch is 25.4 mm exactly, so a foot is 0.3048 m and a board foot (144 cubic inches) 0.002359737216 m3.
    private static final BigDecimal FOOT = new BigDecimal("0.3048");
    private static final BigDecimal SQUARE_FOOT = new BigDecimal("0.09290304");
    private static final BigDecimal BOARD_FOOT = new BigDecimal("0.002359737216");
    private static final Map<String, Unit> ALSO = Map.ofEntries(
            Map.entry("ea", EACH),
            Map.entry("ft", LF),
            Map.entry("lin ft", LF),
            Map.entry("sqft", SF),
            Map.entry("sq ft", SF),
            Map.entry("ft2", SF),
            Map.entry("bd ft", BF),
            Map.entry("coat-sf", CSF),
            Map.entry("m", LM),
            Map.entry("m\u00b2", M2),
            Map.entry("sqm", M2),
            Map.entry("m\u00b3", M3),
            Map.entry("coat-m2", CSM));

    private final String code;
    private final String label;
    private final boolean metric;

    Unit(String code, String label, boolean metric) {
        this.code = code;
        this.label = label;
        this.metric = metric;
    }

    /** Reads a code, or one of the usual spellings such as {@code sq ft}. */
    public static Unit of(String typed) {
        return known(typed)
                .orElseThrow(() -> new NotUnderstood("\"" + Decimals.shown(typed)
                        + "\" is not a unit used here; use each, lf, sf, bf, sheet, joint, panel, part, csf, trip,"
                        + " visit, job, lm, m2, m3 or csm."));
    }

    /** Empty for a word of the shop's own, such as what a material is bought by. */
    public static Optional<Unit> known(String typed) {
        String tidy = Decimals.tidy(typed);
        return Arrays.stream(values())
                .filter(u -> u.code.equals(tidy) || u.label.equals(tidy))
                .findFirst()
                .or(() -> Optional.ofNullable(ALSO.get(tidy)));
    }

    public String code() {
        return code;
    }

    /** The unit in words, one of it: {@code linear foot}. */
    public String label() {
        return label;
    }

    public boolean isMetric() {
        return metric;
    }

    /** The unit of the other way of measuring for the same thing; counted things are their own. */
    public Unit counterpart() {
        return switch (this) {
            case LF -> LM;
            case SF -> M2;
            case BF -> M3;
            case CSF -> CSM;
            case LM -> LF;
            case M2 -> SF;
            case M3 -> BF;
            case CSM -> CSF;
            default -> this;
        };
    }

    /** This unit as the shop measures it. */
    public Unit in(Units units) {
        return isMeasured() && metric != (units == Units.METRIC) ? counterpart() : this;
    }

    /** Decimals as fine as a carpenter counts: tenths, hundredths of a metre, tenths of a litre of wood. */
    public int places() {
        return switch (this) {
            case M3 -> 4;
            case LM, M2, CSM -> 2;
            default -> 1;
        };
    }

    /** True for lengths, areas and volumes; false for things that are counted. */
    public boolean isMeasured() {
        return counterpart() != this;
    }

    /** The exact metric size of one imperial unit, or of one metric unit's counterpart; 1 for counted things. */
    public BigDecimal metricFactor() {
        return switch (this) {
            case LF, LM -> FOOT;
            case SF, M2, CSF, CSM -> SQUARE_FOOT;
            case BF, M3 -> BOARD_FOOT;
            default -> BigDecimal.ONE;
        };
    }

    /** The number of counterparts in {@code amount} of this unit; exact towards metric, 34 digits the other way. */
    public BigDecimal toCounterpart(BigDecimal amount) {
        if (!isMeasured()) {
            return amount;
        }
        return metric ? amount.divide(metricFactor(), MathContext.DECIMAL128) : amount.multiply(metricFactor());
    }

    @Override
    public String toString() {
        return code;
    }
}
