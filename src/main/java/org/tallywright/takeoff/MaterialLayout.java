package org.tallywright.takeoff;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.tallywright.calibration.YieldBook;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.cutting.Answer;
import org.tallywright.cutting.BarPart;
import org.tallywright.cutting.BarPlan;
import org.tallywright.cutting.BarStock;
import org.tallywright.cutting.BoardNeed;
import org.tallywright.cutting.BoardPart;
import org.tallywright.cutting.Grain;
import org.tallywright.cutting.SheetPart;
import org.tallywright.cutting.SheetPlan;
import org.tallywright.cutting.SheetStock;
import org.tallywright.shared.BoardFeet;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;
import org.tallywright.shared.Units;

/** One material's part of the buy list: laid out as sheets, bars or boards, or reckoned by its yield. */
final class MaterialLayout {
    /** More single parts than this of one material are not laid out. */
    private static final int MOST_PARTS = 12_000;

    private static final long INCH = 64 * 127L;
    private static final BigDecimal SQUARE_INCH = BigDecimal.valueOf(INCH).pow(2);
    private static final BigDecimal TWELVE = BigDecimal.valueOf(12);

    private final Layouts layouts;
    private final Units units;
    private final Drawings drawings;

    MaterialLayout(Layouts layouts, Units units) {
        this.layouts = layouts;
        this.units = units;
        this.drawings = new Drawings(units);
    }

    BuyLine line(
            MaterialCard card,
            @Nullable MaterialShape shape,
            List<PartRows.Row> rows,
            OwnedPieces.Owned owned,
            YieldBook.Expected expected) {
        List<String> notices = new ArrayList<>();
        int count = rows.stream().mapToInt(PartRows.Row::all).sum();
        if (shape == null) {
            notices.add(
                    "How it comes is not written down yet, so it is reckoned by its yield. Write it on the material's page.");
            return byYield(card, null, rows, expected, notices);
        }
        if (count > MOST_PARTS) {
            notices.add(count + " parts are too many to lay out, so it is reckoned by its yield.");
            return byYield(card, shape, rows, expected, notices);
        }
        return switch (shape.form()) {
            case SHEET -> sheets(card, shape, rows, owned, expected, notices);
            case BAR -> bars(card, shape, rows, owned, expected, notices);
            case BOARD -> boards(card, shape, rows, owned, expected, notices);
        };
    }

    private static List<PartRows.Row> single(List<PartRows.Row> rows) {
        List<PartRows.Row> single = new ArrayList<>();
        rows.forEach(row -> {
            for (int n = 0; n < row.all(); n++) {
                single.add(row);
            }
        });
        return single;
    }

    private BuyLine sheets(
            MaterialCard card,
            MaterialShape shape,
            List<PartRows.Row> rows,
            OwnedPieces.Owned owned,
            YieldBook.Expected expected,
            List<String> notices) {
        List<PartRows.Row> single = single(rows);
        SheetStock sheet =
                new SheetStock(shape.sheetLength().units(), shape.sheetWidth().units());
        List<SheetStock> offcuts = owned.sizes().stream()
                .filter(size -> size.size() == 2)
                .map(size -> new SheetStock(size.get(0).units(), size.get(1).units()))
                .toList();
        SheetPlan plan = layouts.sheets(
                sheet,
                offcuts,
                matched(rows),
                shape.kerf().units(),
                shape.trim().units());
        int inStock = Math.min(
                plan.bought(), owned.stock().setScale(0, RoundingMode.FLOOR).intValue());
        int buy = plan.bought() - inStock;
        unplaced(plan.unplaced(), single, notices, "is larger than a sheet inside its trim");
        unread(owned, notices);
        BigDecimal whole = area(sheet.length(), sheet.width());
        BigDecimal net = netArea(rows).divide(whole, MathContext.DECIMAL64);
        BigDecimal onNew = onNewSheets(plan, single).divide(whole, MathContext.DECIMAL64);
        BigDecimal share = plan.bought() == 0
                ? BigDecimal.ZERO
                : BigDecimal.valueOf(buy).divide(BigDecimal.valueOf(plan.bought()), MathContext.DECIMAL64);
        List<String> how = new ArrayList<>();
        how.add(plural(buy, "sheet") + " of " + drawings.size(sheet.length(), sheet.width()) + " to buy");
        if (inStock > 0) {
            how.add(plural(inStock, "sheet") + " from stock");
        }
        long used = plan.sheets().stream().filter(SheetPlan.Sheet::isOwned).count();
        if (used > 0) {
            how.add(plural((int) used, "offcut") + " used");
        }
        Scale scale = sheetScale(card, whole);
        return new BuyLine(
                card,
                scale.of(net),
                scale.of(onNew.multiply(share)),
                scale.bought(BigDecimal.valueOf(buy), card),
                how,
                percent(netArea(rows).subtract(unplacedArea(plan.unplaced(), single)), usedArea(plan)),
                expected,
                quality(plan.answer(), "at least " + plural(plan.areaBound(), "sheet") + " by area alone"),
                notices,
                drawings.sheets(plan, single, inStock));
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

    private BuyLine bars(
            MaterialCard card,
            MaterialShape shape,
            List<PartRows.Row> rows,
            OwnedPieces.Owned owned,
            YieldBook.Expected expected,
            List<String> notices) {
        List<PartRows.Row> single = single(rows);
        List<BarStock> stock = new ArrayList<>();
        owned.sizes().stream()
                .filter(size -> size.size() == 1)
                .forEach(size -> stock.add(BarStock.owned(size.get(0).units(), 1)));
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
        long offcuts = plan.bars().stream()
                .filter(bar -> stock.get(bar.stock()).owned())
                .count();
        if (offcuts > 0) {
            how.add(plural((int) offcuts, "offcut") + " used");
        }
        long net = parts.stream().mapToLong(BarPart::length).sum();
        long placed = net
                - plan.unplaced().stream().mapToLong(i -> parts.get(i).length()).sum();
        Unit unit = unit(card);
        boolean counted = unit != Unit.LF && unit != Unit.LM;
        int pieces = toBuy.values().stream().mapToInt(Integer::intValue).sum();
        return new BuyLine(
                card,
                counted ? Quantity.of(plan.bars().size()) : run(net, unit),
                counted ? Quantity.of(pieces) : run(netBought, unit),
                counted
                        ? Quantity.of(pieces)
                        : BuyLister.wholeSteps(run(bought, unit).amount(), card.purchaseStep()),
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
                        shape.trim().units()));
    }

    private static Quantity run(long length, Unit unit) {
        return new Length(length).run(unit == Unit.LM ? Units.METRIC : Units.IMPERIAL);
    }

    private BuyLine boards(
            MaterialCard card,
            MaterialShape shape,
            List<PartRows.Row> rows,
            OwnedPieces.Owned owned,
            YieldBook.Expected expected,
            List<String> notices) {
        List<PartRows.Row> single = single(rows);
        List<BoardPart> parts = single.stream()
                .map(row -> row.details().grain() == Grain.ACROSS
                        ? new BoardPart(
                                row.details().width().units(),
                                row.details().length().units())
                        : new BoardPart(
                                row.details().length().units(),
                                row.details().width().units()))
                .toList();
        BoardNeed need = layouts.boards(parts, shape.boards());
        unplaced(
                need.unplaced(),
                single,
                notices,
                "is longer than any board, or its boards give nothing between their edges");
        gluedUp(need, single, notices);
        Unit unit = unit(card);
        BigDecimal net = wood(BigDecimal.valueOf(need.net()), shape, unit);
        BigDecimal safe = wood(BigDecimal.valueOf(need.safe()), shape, unit);
        BigDecimal likely = wood(BigDecimal.valueOf(need.likely()), shape, unit);
        BigDecimal have = owned.stock().add(owned.offcutQuantity());
        BigDecimal buy = safe.subtract(have).max(BigDecimal.ZERO);
        List<String> how = new ArrayList<>();
        how.add("half the time under " + figure(likely) + ", four times in five under " + figure(safe) + " "
                + card.unit() + ", from " + need.tries() + " lots of boards drawn by chance");
        how.add("boards " + drawings.length(shape.narrowest().units()) + " to "
                + drawings.length(shape.widest().units())
                + " wide, " + drawings.length(shape.shortest().units()) + " to "
                + drawings.length(shape.longest().units()) + " long"
                + (shape.surfacing().isEmpty() ? "" : ", " + shape.surfacing()));
        if (have.signum() > 0) {
            how.add(figure(have.min(safe)) + " " + card.unit() + " from stock and offcuts");
        }
        BigDecimal share = safe.signum() == 0 ? BigDecimal.ZERO : buy.divide(safe, MathContext.DECIMAL64);
        return new BuyLine(
                card,
                Quantity.of(net),
                Quantity.of(net.multiply(share)),
                BuyLister.wholeSteps(buy, card.purchaseStep()),
                how,
                percent(BigDecimal.valueOf(need.net()), BigDecimal.valueOf(need.safe())),
                expected,
                "",
                notices,
                List.of());
    }

    private static void gluedUp(BoardNeed need, List<PartRows.Row> single, List<String> notices) {
        Map<Integer, String> seen = new TreeMap<>();
        for (int i = 0; i < need.staves().size(); i++) {
            if (need.staves().get(i) > 1) {
                PartRows.Row row = single.get(i);
                seen.put(
                        row.number(),
                        "Part " + row.number() + ", " + row.details().name() + ": glued up from "
                                + need.staves().get(i) + " boards.");
            }
        }
        notices.addAll(seen.values());
    }

    /** Square units x rough thickness, in board feet or cubic metres; under an inch counts as an inch. */
    private static BigDecimal wood(BigDecimal area, MaterialShape shape, Unit unit) {
        BigDecimal boardFeet = BoardFeet.tally(shape.thickness(), area);
        return unit == Unit.M3 ? Unit.BF.toCounterpart(boardFeet) : boardFeet;
    }

    private static String figure(BigDecimal amount) {
        return amount.setScale(amount.compareTo(BigDecimal.TEN) < 0 ? 2 : 1, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** Net / yield: the plain rule for what is not laid out. */
    private BuyLine byYield(
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
        BigDecimal squareFeet = area.divide(SQUARE_INCH.multiply(BigDecimal.valueOf(144)), MathContext.DECIMAL64);
        BigDecimal feet = run.divide(BigDecimal.valueOf(INCH).multiply(TWELVE), MathContext.DECIMAL64);
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

    private static void unplaced(List<Integer> unplaced, List<PartRows.Row> single, List<String> notices, String why) {
        Map<Integer, PartRows.Row> seen = new TreeMap<>();
        unplaced.forEach(i -> seen.put(single.get(i).number(), single.get(i)));
        seen.values()
                .forEach(row -> notices.add(
                        "Part " + row.number() + ", " + row.details().name() + " of " + row.pieceName() + ", " + why
                                + "; it is not in these figures."));
    }

    private static void unread(OwnedPieces.Owned owned, List<String> notices) {
        if (!owned.unread().isEmpty()) {
            notices.add("Offcuts whose size could not be read: " + String.join("; ", owned.unread())
                    + ". Write them as 30 x 24.");
        }
    }

    private static String quality(Answer answer, String bound) {
        return switch (answer) {
            case PROVED -> "No layout buys less.";
            case SEARCHED -> "Best of a long search; " + bound + ".";
            case COARSE -> "Coarse: so many parts were laid out only once, by a simple rule. " + "There may be better.";
        };
    }

    private static String plural(int number, String what) {
        return number == 1 ? "1 " + what : number + " " + what + "s";
    }

    private static @Nullable Integer percent(BigDecimal net, BigDecimal gross) {
        return gross.signum() <= 0
                ? null
                : net.multiply(BigDecimal.valueOf(100))
                        .divide(gross, 0, RoundingMode.HALF_UP)
                        .intValue();
    }

    private static BigDecimal area(long length, long width) {
        return BigDecimal.valueOf(length).multiply(BigDecimal.valueOf(width));
    }

    private static BigDecimal netArea(List<PartRows.Row> rows) {
        return rows.stream()
                .map(row -> area(
                                row.details().length().units(),
                                row.details().width().units())
                        .multiply(BigDecimal.valueOf(row.all())))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static Unit unit(MaterialCard card) {
        try {
            return Unit.of(card.unit());
        } catch (NotUnderstood ownWord) {
            return Unit.EACH;
        }
    }

    /** How many of the material's unit a sheet is: one, or its area. */
    private record Scale(BigDecimal each) {
        Quantity of(BigDecimal sheets) {
            return Quantity.of(sheets.multiply(each));
        }

        Quantity bought(BigDecimal sheets, MaterialCard card) {
            return BuyLister.wholeSteps(sheets.multiply(each), card.purchaseStep());
        }
    }

    private static Scale sheetScale(MaterialCard card, BigDecimal area) {
        BigDecimal squareFeet = area.divide(SQUARE_INCH.multiply(BigDecimal.valueOf(144)), MathContext.DECIMAL64);
        return switch (unit(card)) {
            case SF -> new Scale(squareFeet);
            case M2 -> new Scale(Unit.SF.toCounterpart(squareFeet));
            default -> new Scale(BigDecimal.ONE);
        };
    }
}
