package org.tallywright.takeoff;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Unit;

/** Areas of parts and sheets in square units of length, and the unit that a material is counted in. */
final class Areas {
    static final BigDecimal FOOT = BigDecimal.valueOf(Length.FOOT);

    private Areas() {}

    static BigDecimal area(long length, long width) {
        return BigDecimal.valueOf(length).multiply(BigDecimal.valueOf(width));
    }

    static BigDecimal squareFeet(BigDecimal area) {
        return area.divide(FOOT.pow(2), MathContext.DECIMAL64);
    }

    static BigDecimal netArea(List<PartRows.Row> rows) {
        return rows.stream()
                .map(row -> area(
                                row.details().length().units(),
                                row.details().width().units())
                        .multiply(BigDecimal.valueOf(row.all())))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    /** A word of the shop's own counts pieces. */
    static Unit unit(MaterialCard card) {
        try {
            return Unit.of(card.unit());
        } catch (NotUnderstood ownWord) {
            return Unit.EACH;
        }
    }
}
