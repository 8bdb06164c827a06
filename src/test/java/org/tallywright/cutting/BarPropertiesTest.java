package org.tallywright.cutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.tallywright.Draw;
import org.tallywright.Tries;

/** Whatever is asked for: every part comes out of one bar, whole, and no bar gives more than it has. */
class BarPropertiesTest {
    @Test
    void everyBarCanBeCut() {
        Tries.of(300, BarPropertiesTest::cut);
    }

    private static void cut(Draw draw) {
        long kerf = draw.of(0L, 127L, draw.between(0L, 400L));
        long trim = draw.of(0L, draw.between(0L, 2_000L));
        List<BarStock> stock =
                new ArrayList<>(draw.list(0, 3, () -> BarStock.owned(draw.between(1L, 40_000L), draw.between(0, 3))));
        stock.addAll(draw.list(1, 2, () -> BarStock.bought(draw.between(5_000L, 100_000L))));
        List<BarPart> parts = draw.list(0, 12, () -> new BarPart(draw.between(1L, 60_000L), draw.between(0, 6)));

        BarPlan plan = BarPlanner.plan(stock, parts, kerf, trim);

        List<Integer> found = new ArrayList<>(plan.unplaced());
        for (BarPlan.Bar bar : plan.bars()) {
            long used =
                    bar.parts().stream().mapToLong(p -> parts.get(p).length()).sum()
                            + kerf * (bar.parts().size() - 1);
            long usable = stock.get(bar.stock()).length() - 2 * trim;
            assertThat(bar.parts()).isNotEmpty();
            assertThat(used).isLessThanOrEqualTo(usable);
            assertThat(bar.left()).isEqualTo(Math.max(0, usable - used - kerf));
            found.addAll(bar.parts());
        }
        assertThat(found).containsExactlyInAnyOrderElementsOf(asked(parts));
        for (int s = 0; s < stock.size(); s++) {
            int kind = s;
            assertThat(plan.bars().stream().filter(b -> b.stock() == kind).count())
                    .isLessThanOrEqualTo(stock.get(s).count());
        }
        for (int part : plan.unplaced()) {
            assertThat(stock.stream().filter(s -> s.count() == BarStock.ANY))
                    .allMatch(s -> s.length() - 2 * trim < parts.get(part).length());
        }
    }

    private static List<Integer> asked(List<BarPart> parts) {
        return IntStream.range(0, parts.size())
                .boxed()
                .flatMap(i -> IntStream.range(0, parts.get(i).count()).mapToObj(n -> i))
                .toList();
    }

    @Test
    void usesWhatLiesInTheShopFirst() {
        List<BarStock> stock = List.of(BarStock.bought(96), BarStock.owned(40, 2));

        BarPlan plan = BarPlanner.plan(stock, List.of(new BarPart(30, 5)), 0, 0);

        assertThat(plan.bars().stream().map(BarPlan.Bar::stock)).containsExactly(1, 1, 0);
        assertThat(plan.answer()).isEqualTo(Answer.PROVED);
    }
}
