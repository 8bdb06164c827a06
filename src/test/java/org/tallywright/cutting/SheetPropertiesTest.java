package org.tallywright.cutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.tallywright.Draw;
import org.tallywright.Tries;

/** Whatever is asked for: nothing lost, nothing overlapping, every cut from edge to edge, grain and matches kept. */
class SheetPropertiesTest {
    @Test
    void everyLayoutCanBeSawn() {
        Tries.of(100, SheetPropertiesTest::sawn);
    }

    private static void sawn(Draw draw) {
        long kerf = draw.of(0L, 1L, 127L, draw.between(0L, 400L));
        long trim = draw.of(0L, 0L, draw.between(0L, 900L));
        SheetStock sheet = new SheetStock(draw.between(2_000L, 60_000L), draw.between(2_000L, 40_000L));
        List<SheetStock> owned =
                draw.list(0, 3, () -> new SheetStock(draw.between(1L, 30_000L), draw.between(1L, 30_000L)));
        List<SheetPart> parts = new ArrayList<>(draw.list(0, 25, () -> part(draw, 0)));
        int matched = draw.between(0, 3);
        for (int n = 0; n < matched; n++) {
            parts.add(part(draw, 1));
        }
        if (draw.coin()) {
            SheetPart door = part(draw, 2);
            parts.addAll(Collections.nCopies(draw.between(2, 14), door));
        }

        SheetPlan plan = SheetPlanner.plan(sheet, owned, parts, kerf, trim);

        SheetCheck.check(plan, sheet, owned, parts, kerf, trim);
        provedOnlyByArea(plan, sheet, owned, parts, kerf, trim);
        assertThat(plan.sheets().stream().filter(SheetPlan.Sheet::isOwned).map(SheetPlan.Sheet::owned))
                .doesNotHaveDuplicates();
        assertThat(SheetPlanner.plan(sheet, owned, parts, kerf, trim)).isEqualTo(plan);
    }

    /** What was bought less one sheet, and all that was owned, have not the area of the parts. */
    private static void provedOnlyByArea(
            SheetPlan plan, SheetStock sheet, List<SheetStock> owned, List<SheetPart> parts, long kerf, long trim) {
        assertThat(plan.areaBound()).isLessThanOrEqualTo(plan.bought());
        if (plan.answer() == Answer.PROVED && plan.bought() > 0) {
            double all = parts.stream()
                    .mapToDouble(p -> (double) (p.length() + kerf) * (p.width() + kerf))
                    .sum();
            double room = (plan.bought() - 1) * room(sheet, kerf, trim);
            assertThat(all).isGreaterThan(room * (1 - 1e-9));
            assertThat(owned.stream().anyMatch(offcut -> room(offcut, kerf, trim) + room > all)
                            && parts.stream().allMatch(p -> owned.stream().anyMatch(o -> takes(o, p, trim))))
                    .isFalse();
        }
    }

    private static double room(SheetStock stock, long kerf, long trim) {
        return (double) Math.max(0, stock.length() - 2 * trim + kerf) * Math.max(0, stock.width() - 2 * trim + kerf);
    }

    private static boolean takes(SheetStock stock, SheetPart part, long trim) {
        long least = Math.min(part.length(), part.width());
        long most = Math.max(part.length(), part.width());
        return least <= Math.min(stock.length(), stock.width()) - 2 * trim
                && most <= Math.max(stock.length(), stock.width()) - 2 * trim;
    }

    private static SheetPart part(Draw draw, int match) {
        return new SheetPart(draw.between(1L, 30_000L), draw.between(1L, 20_000L), draw.of(Grain.values()), match);
    }
}
