package org.tallywright.takeoff;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.tallywright.shared.BoardFeet;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;
import org.tallywright.takeoff.formula.Amount;

/** Turns what a formula comes to into a quantity of a unit: lengths to lf or lm, areas to sf or m2, volumes to bf or m3. */
final class Measured {
    private static final BigDecimal MOST = BigDecimal.valueOf(1_000_000);

    private Measured() {}

    /** @throws NotUnderstood where the kind does not fit the unit, or it is beyond what can be kept */
    static Quantity in(Unit unit, Amount amount, int pieces) {
        int wanted = power(unit);
        if (amount.power() != wanted && amount.signum() != 0) {
            throw new NotUnderstood("comes to " + amount.kind() + ", but is counted in " + unit.code() + ".");
        }
        BigDecimal feet = amount.decimal()
                .divide(Areas.FOOT.pow(wanted), MathContext.DECIMAL128)
                .multiply(BigDecimal.valueOf(pieces));
        BigDecimal imperial = wanted == 3 ? BoardFeet.ofCubicFeet(feet) : feet;
        BigDecimal figure = unit.isMetric() ? unit.counterpart().toCounterpart(imperial) : imperial;
        if (figure.signum() < 0 || figure.compareTo(MOST) > 0) {
            throw new NotUnderstood("comes to less than nothing, or to more than can be kept.");
        }
        return new Quantity(figure.setScale(places(unit), RoundingMode.HALF_UP));
    }

    private static int power(Unit unit) {
        return switch (unit) {
            case LF, LM -> 1;
            case SF, M2, CSF, CSM -> 2;
            case BF, M3 -> 3;
            default -> 0;
        };
    }

    private static int places(Unit unit) {
        return switch (unit) {
            case M3 -> 4;
            case LM, M2, CSM -> 2;
            default -> 1;
        };
    }
}
