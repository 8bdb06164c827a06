package org.tallywright.measuring;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * Woods whose movement is known. Source: Wood Handbook, FPL-GTR-190 table 13-5 (share of the width for each percent of
 * moisture, 6 to 14 percent) and table 4-3 (shrinkage from green to ovendry, in percent of the green size). Where a value
 * was not read in the book itself, it is shown as common practice.
 */
public enum Species {
    ALDER_RED("Alder, red", 0.00151, 0.00256, 4.4, 7.3, true, true),
    ASH_WHITE("Ash, white", 0.00169, 0.00274, 4.9, 7.8, true, true),
    BIRCH_YELLOW("Birch, yellow", 0.00256, 0.00338, 7.3, 9.5, true, true),
    CHERRY_BLACK("Cherry, black", 0.00126, 0.00248, 3.7, 7.1, true, true),
    MAPLE_SUGAR_HARD("Maple, sugar (hard)", 0.00165, 0.00353, 4.8, 9.9, true, false),
    MAPLE_RED("Maple, red", 0.00137, 0.00289, 4.0, 8.2, true, false),
    RED_OAK_COMMERCIAL("Red oak, commercial", 0.00158, 0.00369, 4.0, 8.6, true, false),
    WHITE_OAK_COMMERCIAL("White oak, commercial", 0.00180, 0.00365, 5.6, 10.5, true, true),
    WALNUT_BLACK("Walnut, black", 0.00190, 0.00274, 5.5, 7.8, true, true),
    YELLOW_POPLAR("Yellow-poplar", 0.00158, 0.00289, 4.6, 8.2, false, true),
    DOUGLAS_FIR_COAST("Douglas-fir, coast", 0.00165, 0.00267, 4.8, 7.6, false, true),
    WHITE_FIR("White fir", 0.00112, 0.00245, 3.3, 7.0, false, true),
    ASPEN_QUAKING("Aspen, quaking", 0.00119, 0.00234, 3.5, 6.7, true, true),
    BASSWOOD_AMERICAN("Basswood, American", 0.00230, 0.00330, 6.6, 9.3, true, true),
    BEECH_AMERICAN("Beech, American", 0.00190, 0.00431, 5.5, 11.9, true, true),
    HACKBERRY("Hackberry", 0.00165, 0.00315, 4.8, 8.9, true, true),
    SYCAMORE_AMERICAN("Sycamore, American", 0.00172, 0.00296, 5.0, 8.4, true, true);

    private final String label;
    private final double radial;
    private final double tangential;
    private final double radialShrinkage;
    private final double tangentialShrinkage;
    private final boolean coefficientsRead;
    private final boolean shrinkageRead;

    Species(
            String label,
            double radial,
            double tangential,
            double radialShrinkage,
            double tangentialShrinkage,
            boolean coefficientsRead,
            boolean shrinkageRead) {
        this.label = label;
        this.radial = radial;
        this.tangential = tangential;
        this.radialShrinkage = radialShrinkage;
        this.tangentialShrinkage = tangentialShrinkage;
        this.coefficientsRead = coefficientsRead;
        this.shrinkageRead = shrinkageRead;
    }

    public String label() {
        return label;
    }

    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    static Optional<Species> of(String code) {
        return Arrays.stream(values()).filter(s -> s.code().equals(code)).findFirst();
    }

    /** Share of the width for each percent of moisture, 6 to 14 percent. */
    public double coefficient(Cut cut) {
        return cut.isTangential() ? tangential : radial;
    }

    /** From green to ovendry, in percent of the green size. */
    public double shrinkagePercent(Cut cut) {
        return cut.isTangential() ? tangentialShrinkage : radialShrinkage;
    }

    public boolean coefficientsRead() {
        return coefficientsRead;
    }

    public boolean shrinkageRead() {
        return shrinkageRead;
    }
}
