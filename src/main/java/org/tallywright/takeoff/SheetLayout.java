package org.tallywright.takeoff;

import static org.tallywright.takeoff.Areas.area;
import static org.tallywright.takeoff.Areas.netArea;
import static org.tallywright.takeoff.Areas.squareFeet;
import static org.tallywright.takeoff.Areas.unit;
import static org.tallywright.takeoff.LayoutWords.percent;
import static org.tallywright.takeoff.LayoutWords.plural;
import static org.tallywright.takeoff.LayoutWords.quality;
import static org.tallywright.takeoff.LayoutWords.single;
import static org.tallywright.takeoff.LayoutWords.unplaced;
import static org.tallywright.takeoff.LayoutWords.unread;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.tallywright.calibration.YieldBook;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.cutting.SheetPart;
import org.tallywright.cutting.SheetPlan;
import org.tallywright.cutting.SheetStock;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;

/** What is bought in sheets: laid out on them, the shop's offcuts first. */
final class SheetLayout {
    private final Layouts layouts;
    private final Drawings drawings;

    SheetLayout(Layouts layouts, Drawings drawings) {
        this.layouts = layouts;
        this.drawings = drawings;
    }

    BuyLine line(
            MaterialCard card,
            MaterialShape shape,
            List<PartRows.Row> rows,
            OwnedPieces.Owned owned,
            YieldBook.Expected expected,
            List<String> notices) {
        List<PartRows.Row> single = single(rows);
        SheetStock sheet =
                new SheetStock(shape.sheetLength().units(), shape.sheetWidth().units());
        List<OwnedPieces.Offcut> here = owned.sized(2);
        List<SheetStock> offcuts = here.stream()
                .map(offcut -> new SheetStock(
                        offcut.size().get(0).units(), offcut.size().get(1).units()))
                .toList();
        List<SheetPart> parts = matched(rows);
        SheetPlan plan = layouts.sheets(
                sheet, offcuts, parts, shape.kerf().units(), shape.trim().units());
        BigDecimal whole = area(sheet.length(), sheet.width());
        Scale scale = sheetScale(card, whole);
        int inStock = Math.min(plan.bought(), scale.sheets(owned.stock()));
        int buy = plan.bought() - inStock;
        unplaced(plan.unplaced(), single, notices, "is larger than a sheet inside its trim");
        parted(plan.parted(), parts, single, notices);
        unread(owned, notices);
        BigDecimal net = netArea(rows).divide(whole, MathContext.DECIMAL64);
        BigDecimal onNew = onNewSheets(plan, single).divide(whole, MathContext.DECIMAL64);
        List<String> how = new ArrayList<>();
        how.add(plural(buy, "sheet") + " of " + drawings.size(sheet.length(), sheet.width()) + " to buy");
        if (inStock > 0) {
            how.add(plural(inStock, "sheet") + " from stock");
        }
        List<BuyLine.Offcut> used = plan.sheets().stream()
                .filter(SheetPlan.Sheet::isOwned)
                .map(laid -> here.get(laid.owned()).used())
                .toList();
        if (!used.isEmpty()) {
            how.add(plural(used.size(), "offcut") + " used");
        }
        Quantity stock = scale.of(BigDecimal.valueOf(inStock));
        Quantity bought = scale.bought(BigDecimal.valueOf(buy), card);
        return new BuyLine(
                card,
                scale.of(net),
                new Charge(scale.of(onNew), bought.plus(stock), bought.plus(stock), Quantity.ZERO, stock, true),
                bought,
                how,
                percent(netArea(rows).subtract(unplacedArea(plan.unplaced(), single)), usedArea(plan)),
                expected,
                quality(plan.answer(), "at least " + plural(plan.areaBound(), "sheet") + " by area alone"),
                notices,
                drawings.sheets(
                        plan,
                        single,
                        inStock,
                        shape.kerf().units(),
                        shape.trim().units()),
                used,
                BuyLine.Wanted.NOTHING);
    }

    private static List<SheetPart> matched(List<PartRows.Row> rows) {
        Map<String, Integer> groups = new HashMap<>();
        List<SheetPart> parts = new ArrayList<>();
        for (PartRows.Row row : rows) {
            for (int n = 0; n < row.all(); n++) {
                PartDetails part = row.details();
                // Matching parts of one piece go together; a second piece alike has its own.
                String word = row.pieceId() + "/" + n / part.quantity() + "/" + part.matched();
                int match = part.matched().isEmpty() ? 0 : groups.computeIfAbsent(word, w -> groups.size() + 1);
                parts.add(new SheetPart(part.length().units(), part.width().units(), part.grain(), match));
            }
        }
        return parts;
    }

    private static void parted(
            List<SheetPlan.Parted> groups, List<SheetPart> parts, List<PartRows.Row> single, List<String> notices) {
        groups.stream()
                .map(group -> {
                    int first = IntStream.range(0, parts.size())
                            .filter(i -> parts.get(i).match() == group.match())
                            .findFirst()
                            .orElseThrow();
                    PartRows.Row row = single.get(first);
                    return "No sheet takes all that match as " + row.details().matched() + " in " + row.pieceName()
                            + ": they are cut in " + group.runs()
                            + " groups, and the figure runs on only within each.";
                })
                .distinct()
                .forEach(notices::add);
    }

    private static BigDecimal onNewSheets(SheetPlan plan, List<PartRows.Row> single) {
        return plan.sheets().stream()
                .filter(sheet -> !sheet.isOwned())
                .flatMap(sheet -> sheet.parts().stream())
                .map(part -> area(
                        single.get(part.part()).details().length().units(),
                        single.get(part.part()).details().width().units()))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static BigDecimal usedArea(SheetPlan plan) {
        return plan.sheets().stream()
                .map(sheet -> area(sheet.stock().length(), sheet.stock().width()))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static BigDecimal unplacedArea(List<Integer> unplaced, List<PartRows.Row> single) {
        return unplaced.stream()
                .map(i -> area(
                        single.get(i).details().length().units(),
                        single.get(i).details().width().units()))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    /** How many of the material's unit a sheet is: one, or its area. */
    private record Scale(BigDecimal each) {
        Quantity of(BigDecimal sheets) {
            return Quantity.of(sheets.multiply(each));
        }

        int sheets(BigDecimal quantity) {
            return quantity.divide(each, 0, RoundingMode.FLOOR).intValue();
        }

        Quantity bought(BigDecimal sheets, MaterialCard card) {
            return BuyLister.wholeSteps(sheets.multiply(each), card.purchaseStep());
        }
    }

    private static Scale sheetScale(MaterialCard card, BigDecimal area) {
        BigDecimal squareFeet = squareFeet(area);
        return switch (unit(card)) {
            case SF -> new Scale(squareFeet);
            case M2 -> new Scale(Unit.SF.toCounterpart(squareFeet));
            default -> new Scale(BigDecimal.ONE);
        };
    }
}
