package org.tallywright.takeoff;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.tallywright.cutting.Answer;

/** What is said of a layout beside its figures. */
final class LayoutWords {
    private LayoutWords() {}

    /** One row for each single part. */
    static List<PartRows.Row> single(List<PartRows.Row> rows) {
        List<PartRows.Row> single = new ArrayList<>();
        rows.forEach(row -> {
            for (int n = 0; n < row.all(); n++) {
                single.add(row);
            }
        });
        return single;
    }

    static String plural(int number, String what) {
        return number == 1 ? "1 " + what : number + " " + what + "s";
    }

    static String figure(BigDecimal amount) {
        return amount.setScale(amount.compareTo(BigDecimal.TEN) < 0 ? 2 : 1, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    static @Nullable Integer percent(BigDecimal net, BigDecimal gross) {
        return gross.signum() <= 0
                ? null
                : net.multiply(BigDecimal.valueOf(100))
                        .divide(gross, 0, RoundingMode.HALF_UP)
                        .intValue();
    }

    static String quality(Answer answer, String bound) {
        return switch (answer) {
            case PROVED -> "No layout buys less.";
            case SEARCHED -> "Best of a long search; " + bound + ".";
            case COARSE -> "Coarse: so many parts were laid out only once, by a simple rule. " + "There may be better.";
        };
    }

    static void unplaced(List<Integer> unplaced, List<PartRows.Row> single, List<String> notices, String why) {
        Map<Integer, PartRows.Row> seen = new TreeMap<>();
        unplaced.forEach(i -> seen.put(single.get(i).number(), single.get(i)));
        seen.values()
                .forEach(row -> notices.add(
                        "Part " + row.number() + ", " + row.details().name() + " of " + row.pieceName() + ", " + why
                                + "; it is not in these figures."));
    }

    static void unread(OwnedPieces.Owned owned, List<String> notices) {
        if (!owned.unread().isEmpty()) {
            notices.add("Offcuts whose size could not be read: " + String.join("; ", owned.unread())
                    + ". Write them as 30 x 24.");
        }
    }
}
