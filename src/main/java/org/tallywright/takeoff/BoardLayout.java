package org.tallywright.takeoff;

import static org.tallywright.takeoff.Areas.unit;
import static org.tallywright.takeoff.LayoutWords.figure;
import static org.tallywright.takeoff.LayoutWords.percent;
import static org.tallywright.takeoff.LayoutWords.single;
import static org.tallywright.takeoff.LayoutWords.unplaced;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.tallywright.calibration.YieldBook;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.cutting.BoardNeed;
import org.tallywright.cutting.BoardPart;
import org.tallywright.cutting.Grain;
import org.tallywright.shared.BoardFeet;
import org.tallywright.shared.Length;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;

/** What is bought in boards of chance widths and lengths: by lots drawn by chance. */
final class BoardLayout {
    private final Layouts layouts;
    private final Drawings drawings;

    BoardLayout(Layouts layouts, Drawings drawings) {
        this.layouts = layouts;
        this.drawings = drawings;
    }

    BuyLine line(
            MaterialCard card,
            MaterialShape shape,
            List<PartRows.Row> rows,
            OwnedPieces.Owned all,
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
        OwnedPieces.Owned owned = all.upTo(safe, shortest(parts));
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
        owned.words(safe, card.unit()).forEach(how::add);
        return new BuyLine(
                card,
                Quantity.of(net),
                Charge.of(card, net, likely, safe, owned, true),
                BuyLister.wholeSteps(buy, card.purchaseStep()),
                how,
                percent(BigDecimal.valueOf(need.net()), BigDecimal.valueOf(need.safe())),
                expected,
                "",
                notices,
                List.of(),
                owned.used(),
                BuyLine.Wanted.NOTHING);
    }

    private static Length shortest(List<BoardPart> parts) {
        return new Length(parts.stream().mapToLong(BoardPart::length).min().orElse(0));
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
}
