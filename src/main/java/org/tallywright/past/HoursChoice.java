package org.tallywright.past;

import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;

/**
 * One way to say the hours of a copied task: a rate, whose hours follow the quantity.
 *
 * @param rate hours per unit
 */
public record HoursChoice(Basis basis, UnitHours rate) {
    /** Which hours are taken. */
    public enum Basis {
        /** The rate book's starting rate of today: what the calibration is measured against. */
        BOOK("Rate book"),
        /** What it really took, without rework. */
        TOOK("As it took"),
        /** What was estimated then. */
        THEN("As estimated then");

        private final String label;

        Basis(String label) {
            this.label = label;
        }

        public String code() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /** {@code As it took: 14 h 30 (0.659 h/sf)}. */
    public String words(Quantity quantity, Unit unit) {
        return basis.label + ": " + rate.times(quantity) + " (" + shortened() + " h/" + unit.code() + ")";
    }

    private String shortened() {
        return UnitHours.of(rate.amount().round(new java.math.MathContext(3))).toString();
    }
}
