package org.tallywright.takeoff;

import static org.tallywright.takeoff.Areas.area;
import static org.tallywright.takeoff.Areas.netArea;
import static org.tallywright.takeoff.Areas.squareFeet;
import static org.tallywright.takeoff.Areas.unit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
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
            OwnedPieces.Owned owned,
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
                BigDecimal.valueOf(rows.stream().mapToLong(PartRows.Row::all).sum());
        };
        boolean byLength = unit == Unit.LF || unit == Unit.LM;
        List<String> how = new ArrayList<>();
        how.add(reckoned(card, byLength));
        BuyLine.Wanted wanted =
                shape != null ? BuyLine.Wanted.NOTHING : byLength ? BuyLine.Wanted.LENGTHS : BuyLine.Wanted.FORM;
        return line(card, Quantity.of(net), shortest(rows), owned, how, expected, notices, wanted);
    }

    private static Length shortest(List<PartRows.Row> rows) {
        return rows.stream()
                .map(row -> row.details().length())
                .min(Length::compareTo)
                .orElse(Length.ZERO);
    }

    private static String reckoned(MaterialCard card, boolean byLength) {
        BigDecimal allowance = BigDecimal.ONE
                .divide(card.startingYield().amount(), MathContext.DECIMAL64)
                .subtract(BigDecimal.ONE)
                .movePointRight(2)
                .setScale(0, RoundingMode.HALF_UP);
        return (byLength ? "net length and a waste allowance of " + allowance.toPlainString() + " %: " : "")
                + "net / starting yield of "
                + card.startingYield().percent().amount().stripTrailingZeros().toPlainString() + " %";
    }

    /** What no part is cut from: screws, glue, hinges. */
    static BuyLine supply(MaterialCard card, Quantity net, OwnedPieces.Owned owned, YieldBook.Expected expected) {
        return line(card, net, Length.ZERO, owned, new ArrayList<>(), expected, List.of(), BuyLine.Wanted.NOTHING);
    }

    private static BuyLine line(
            MaterialCard card,
            Quantity net,
            Length shortest,
            OwnedPieces.Owned all,
            List<String> how,
            YieldBook.Expected expected,
            List<String> notices,
            BuyLine.Wanted wanted) {
        BigDecimal gross = net.amount().divide(card.startingYield().amount(), MathContext.DECIMAL64);
        OwnedPieces.Owned owned = all.upTo(gross, shortest);
        BigDecimal buy =
                gross.subtract(owned.stock()).subtract(owned.offcutQuantity()).max(BigDecimal.ZERO);
        how.addAll(owned.words(gross, card.unit()));
        return new BuyLine(
                card,
                net,
                Charge.of(card, net.amount(), gross, gross, owned, false),
                BuyLister.wholeSteps(buy, card.purchaseStep()),
                how,
                null,
                expected,
                "",
                notices,
                List.of(),
                owned.used(),
                wanted);
    }
}
