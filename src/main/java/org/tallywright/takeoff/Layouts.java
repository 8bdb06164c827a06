package org.tallywright.takeoff;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;
import org.tallywright.cutting.BarPart;
import org.tallywright.cutting.BarPlan;
import org.tallywright.cutting.BarPlanner;
import org.tallywright.cutting.BarStock;
import org.tallywright.cutting.BoardBuyer;
import org.tallywright.cutting.BoardNeed;
import org.tallywright.cutting.BoardPart;
import org.tallywright.cutting.BoardRules;
import org.tallywright.cutting.SheetPart;
import org.tallywright.cutting.SheetPlan;
import org.tallywright.cutting.SheetPlanner;
import org.tallywright.cutting.SheetStock;

/** Layouts are the same for the same question, so the last ones are remembered; nothing in them belongs to a person. */
@Component
class Layouts {
    private static final int KEPT = 48;

    private final Map<Object, Object> kept = new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Object, Object> eldest) {
            return size() > KEPT;
        }
    };

    private record Sheets(SheetStock bought, List<SheetStock> owned, List<SheetPart> parts, long kerf, long trim) {}

    private record Bars(List<BarStock> stock, List<BarPart> parts, long kerf, long trim) {}

    private record Boards(List<BoardPart> parts, BoardRules rules) {}

    SheetPlan sheets(SheetStock bought, List<SheetStock> owned, List<SheetPart> parts, long kerf, long trim) {
        return remembered(
                new Sheets(bought, owned, parts, kerf, trim),
                SheetPlan.class,
                () -> SheetPlanner.plan(bought, owned, parts, kerf, trim));
    }

    BarPlan bars(List<BarStock> stock, List<BarPart> parts, long kerf, long trim) {
        return remembered(
                new Bars(stock, parts, kerf, trim), BarPlan.class, () -> BarPlanner.plan(stock, parts, kerf, trim));
    }

    BoardNeed boards(List<BoardPart> parts, BoardRules rules) {
        return remembered(new Boards(parts, rules), BoardNeed.class, () -> BoardBuyer.need(parts, rules));
    }

    private <T> T remembered(Object question, Class<T> sort, Supplier<T> work) {
        synchronized (kept) {
            Object answer = kept.get(question);
            if (answer != null) {
                return sort.cast(answer);
            }
        }
        T answer = work.get();
        synchronized (kept) {
            kept.put(question, answer);
        }
        return answer;
    }
}
