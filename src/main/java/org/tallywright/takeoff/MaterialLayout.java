package org.tallywright.takeoff;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.tallywright.calibration.YieldBook;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.shared.Units;

/** One material's part of the buy list: laid out as sheets, bars or boards, or reckoned by its yield. */
final class MaterialLayout {
    /** More single parts than this of one material are not laid out. */
    private static final int MOST_PARTS = 12_000;

    private final SheetLayout sheets;
    private final BarLayout bars;
    private final BoardLayout boards;

    MaterialLayout(Layouts layouts, Units units) {
        Drawings drawings = new Drawings(units);
        sheets = new SheetLayout(layouts, drawings);
        bars = new BarLayout(layouts, drawings);
        boards = new BoardLayout(layouts, drawings);
    }

    BuyLine line(
            MaterialCard card,
            @Nullable MaterialShape shape,
            List<PartRows.Row> rows,
            OwnedPieces.Owned owned,
            YieldBook.Expected expected) {
        List<String> notices = new ArrayList<>();
        if (!owned.elsewhere().isEmpty()) {
            notices.add("Held for another job and left out: "
                    + owned.elsewhere().stream()
                            .map(offcut -> offcut.written() + " (" + offcut.heldFor() + ")")
                            .collect(Collectors.joining("; "))
                    + ".");
        }
        long count = rows.stream().mapToLong(PartRows.Row::all).sum();
        if (shape == null) {
            BuyLine line = YieldReckoning.line(card, null, rows, owned, expected, notices);
            notices.add(
                    line.wanted() == BuyLine.Wanted.LENGTHS
                            ? "The lengths it is sold in are not written down, so it is bought by net length and a waste allowance."
                            : "How it comes is not written down yet, so it is reckoned by its yield.");
            return line;
        }
        if (count > MOST_PARTS) {
            notices.add(count + " parts are too many to lay out, so it is reckoned by its yield.");
            return YieldReckoning.line(card, shape, rows, owned, expected, notices);
        }
        return switch (shape.form()) {
            case SHEET -> sheets.line(card, shape, rows, owned, expected, notices);
            case BAR -> bars.line(card, shape, rows, owned, expected, notices);
            case BOARD -> boards.line(card, shape, rows, owned, expected, notices);
        };
    }
}
