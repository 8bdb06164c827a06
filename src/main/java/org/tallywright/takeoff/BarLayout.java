package org.tallywright.takeoff;

import static org.tallywright.takeoff.Areas.unit;
import static org.tallywright.takeoff.LayoutWords.percent;
import static org.tallywright.takeoff.LayoutWords.plural;
import static org.tallywright.takeoff.LayoutWords.quality;
import static org.tallywright.takeoff.LayoutWords.single;
import static org.tallywright.takeoff.LayoutWords.unplaced;
import static org.tallywright.takeoff.LayoutWords.unread;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.tallywright.calibration.YieldBook;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.cutting.BarPart;
import org.tallywright.cutting.BarPlan;
import org.tallywright.cutting.BarStock;
import org.tallywright.shared.Length;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;
import org.tallywright.shared.Units;

/** What is bought in lengths: cut from the shop's offcuts first, then from the lengths it is sold in. */
final class BarLayout {
    private final Layouts layouts;
    private final Drawings drawings;

    BarLayout(Layouts layouts, Drawings drawings) {
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
        List<BarStock> stock = new ArrayList<>();
        List<OwnedPieces.Offcut> here = owned.sized(1);
        here.forEach(offcut -> stock.add(BarStock.owned(offcut.size().get(0).units(), 1)));
        shape.barLengths().forEach(length -> stock.add(BarStock.bought(length.units())));
        List<BarPart> parts = single.stream()
                .map(row -> new BarPart(row.details().length().units(), 1))
                .toList();
        BarPlan plan =
                layouts.bars(stock, parts, shape.kerf().units(), shape.trim().units());
        unplaced(plan.unplaced(), single, notices, "is longer than any length it is sold in");
        unread(owned, notices);
        if (owned.stock().signum() > 0) {
            notices.add("In stock, lengths not known: " + new Quantity(owned.stock()) + " " + card.unit()
                    + ". Look there first.");
        }
        Map<Long, Integer> toBuy = new TreeMap<>();
        long bought = 0;
        long used = 0;
        long netBought = 0;
        for (BarPlan.Bar bar : plan.bars()) {
            BarStock from = stock.get(bar.stock());
            used += from.length();
            if (!from.owned()) {
                toBuy.merge(from.length(), 1, Integer::sum);
                bought += from.length();
                netBought += bar.parts().stream()
                        .mapToLong(i -> parts.get(i).length())
                        .sum();
            }
        }
        List<String> how = new ArrayList<>();
        toBuy.forEach((length, number) -> how.add(number + " of " + drawings.length(length)));
        List<BuyLine.Offcut> offcuts = plan.bars().stream()
                .filter(bar -> stock.get(bar.stock()).owned())
                .map(bar -> here.get(bar.stock()).used())
                .toList();
        if (!offcuts.isEmpty()) {
            how.add(plural(offcuts.size(), "offcut") + " used");
        }
        long net = parts.stream().mapToLong(BarPart::length).sum();
        long placed = net
                - plan.unplaced().stream().mapToLong(i -> parts.get(i).length()).sum();
        Unit unit = unit(card);
        boolean counted = unit != Unit.LF && unit != Unit.LM;
        int pieces = toBuy.values().stream().mapToInt(Integer::intValue).sum();
        Quantity buy = counted
                ? Quantity.of(pieces)
                : BuyLister.wholeSteps(run(bought, unit).amount(), card.purchaseStep());
        return new BuyLine(
                card,
                counted ? Quantity.of(plan.bars().size()) : run(net, unit),
                new Charge(counted ? buy : run(netBought, unit), buy, buy, Quantity.ZERO, Quantity.ZERO, true),
                buy,
                how,
                percent(BigDecimal.valueOf(placed), BigDecimal.valueOf(used)),
                expected,
                quality(plan.answer(), "no plan buys less than " + drawings.length(plan.bound())),
                notices,
                drawings.bars(
                        plan,
                        single,
                        stock.stream().map(BarStock::length).toList(),
                        stock.stream().map(BarStock::owned).toList(),
                        shape.kerf().units(),
                        shape.trim().units()),
                offcuts,
                BuyLine.Wanted.NOTHING);
    }

    private static Quantity run(long length, Unit unit) {
        return new Length(length).run(unit == Unit.LM ? Units.METRIC : Units.IMPERIAL);
    }
}
