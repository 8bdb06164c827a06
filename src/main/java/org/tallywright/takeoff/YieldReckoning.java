package org.tallywright.takeoff;

import static org.tallywright.takeoff.Areas.area;
import static org.tallywright.takeoff.Areas.netArea;
import static org.tallywright.takeoff.Areas.squareFeet;
import static org.tallywright.takeoff.Areas.unit;
import static org.tallywright.takeoff.LayoutWords.figure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.tallywright.calibration.YieldBook;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.shared.BoardFeet;
import org.tallywright.shared.Length;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;

/** What is not laid out: net / yield. */
final class YieldReckoning {
    private YieldReckoning() {}

    /** Net / yield: the plain rule for what is not laid out. */
    static BuyLine line(
            MaterialCard card,
            @Nullable MaterialShape shape,
            List<PartRows.Row> rows,
            YieldBook.Expected expected,
            List<String> notices) {
        Unit unit = unit(card);
        BigDecimal area = netArea(rows);
        BigDecimal run = rows.stream()
                .map(row -> BigDecimal.valueOf(row.details().length().units()).multiply(BigDecimal.valueOf(row.all())))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal squareFeet = squareFeet(area);
        BigDecimal feet = run.divide(Areas.FOOT, MathContext.DECIMAL64);
        BigDecimal net = switch (unit) {
            case LF -> feet;
            case LM -> Unit.LF.toCounterpart(feet);
            case SF -> squareFeet;
            case M2 -> Unit.SF.toCounterpart(squareFeet);
            case BF, M3 -> {
                BigDecimal boardFeet = BoardFeet.tally(shape == null ? Length.ZERO : shape.thickness(), area);
                yield unit == Unit.M3 ? Unit.BF.toCounterpart(boardFeet) : boardFeet;
            }
            // A sheet of 4 x 8 ft where nothing says otherwise.
            case SHEET ->
                shape == null || shape.sheetLength().isZero()
                        ? squareFeet.divide(BigDecimal.valueOf(32), MathContext.DECIMAL64)
                        : area.divide(
                                area(
                                        shape.sheetLength().units(),
                                        shape.sheetWidth().units()),
                                MathContext.DECIMAL64);
            default ->
                BigDecimal.valueOf(rows.stream().mapToInt(PartRows.Row::all).sum());
        };
        BigDecimal gross = net.divide(card.startingYield().amount(), MathContext.DECIMAL64);
        return new BuyLine(
                card,
                Quantity.of(net),
                Quantity.of(net),
                BuyLister.wholeSteps(gross, card.purchaseStep()),
                List.of("net / starting yield of "
                        + card.startingYield()
                                .percent()
                                .amount()
                                .stripTrailingZeros()
                                .toPlainString() + " %"),
                null,
                expected,
                "",
                notices,
                List.of());
    }

    /** What no part is cut from: screws, glue, hinges. */
    static BuyLine supply(MaterialCard card, Quantity net, OwnedPieces.Owned owned, YieldBook.Expected expected) {
        BigDecimal gross = net.amount().divide(card.startingYield().amount(), MathContext.DECIMAL64);
        BigDecimal have = owned.stock().add(owned.offcutQuantity());
        BigDecimal buy = gross.subtract(have).max(BigDecimal.ZERO);
        BigDecimal share = gross.signum() == 0 ? BigDecimal.ZERO : buy.divide(gross, MathContext.DECIMAL64);
        return new BuyLine(
                card,
                net,
                Quantity.of(net.amount().multiply(share)),
                BuyLister.wholeSteps(buy, card.purchaseStep()),
                have.signum() > 0 ? List.of(figure(have.min(gross)) + " " + card.unit() + " from stock") : List.of(),
                null,
                expected,
                "",
                List.of(),
                List.of());
    }
}
