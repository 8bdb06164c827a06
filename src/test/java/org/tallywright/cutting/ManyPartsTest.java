package org.tallywright.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Ten thousand parts, parts larger than the stock, a kerf below zero. */
class ManyPartsTest {
    private static final int MANY = 10_000;

    @Test
    @Timeout(60)
    void laysTenThousandPartsOnceAndSaysSo() {
        SplittableRandom random = new SplittableRandom(7);
        List<SheetPart> parts = Stream.generate(
                        () -> new SheetPart(random.nextLong(40, 700), random.nextLong(40, 400), Grain.ANY, 0))
                .limit(MANY)
                .toList();

        long started = System.nanoTime();
        SheetPlan plan = SheetPlanner.plan(new SheetStock(1536, 768), List.of(), parts, 2, 4);
        Duration took = Duration.ofNanos(System.nanoTime() - started);

        assertThat(plan.answer()).isEqualTo(Answer.COARSE);
        assertThat(plan.unplaced()).isEmpty();
        assertThat(plan.sheets().stream().mapToInt(s -> s.parts().size()).sum()).isEqualTo(MANY);
        assertThat(took).isLessThan(Duration.ofSeconds(30));
    }

    @Test
    @Timeout(60)
    void cutsTenThousandLengthsOnceAndSaysSo() {
        SplittableRandom random = new SplittableRandom(7);
        List<BarPart> parts = Stream.generate(() -> new BarPart(random.nextLong(100, 30_000), 1))
                .limit(MANY)
                .toList();

        BarPlan plan = BarPlanner.plan(List.of(BarStock.bought(98_304)), parts, 127, 0);

        assertThat(plan.answer()).isEqualTo(Answer.COARSE);
        assertThat(plan.bars().stream().mapToInt(b -> b.parts().size()).sum()).isEqualTo(MANY);
    }

    @Test
    void namesThePartThatFitsNowhere() {
        List<SheetPart> parts = List.of(new SheetPart(97, 10, Grain.ANY, 0), new SheetPart(96, 48, Grain.ANY, 0));

        assertThat(SheetPlanner.plan(new SheetStock(96, 48), List.of(), parts, 0, 0)
                        .unplaced())
                .containsExactly(0);
        assertThat(SheetPlanner.plan(new SheetStock(96, 48), List.of(), parts, 0, 1)
                        .unplaced())
                .containsExactly(0, 1);
        assertThat(BarPlanner.plan(List.of(BarStock.bought(96)), List.of(new BarPart(97, 2)), 0, 0)
                        .unplaced())
                .containsExactly(0, 0);
    }

    @Test
    void refusesAKerfBelowNothing() {
        assertThatThrownBy(() -> SheetPlanner.plan(new SheetStock(9, 9), List.of(), List.of(), -1, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> BarPlanner.plan(List.of(BarStock.bought(9)), List.of(), -1, 0))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
