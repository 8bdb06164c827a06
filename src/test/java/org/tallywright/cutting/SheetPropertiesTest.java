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
        assertThat(plan.sheets().stream().filter(SheetPlan.Sheet::isOwned).map(SheetPlan.Sheet::owned))
                .doesNotHaveDuplicates();
        assertThat(SheetPlanner.plan(sheet, owned, parts, kerf, trim)).isEqualTo(plan);
    }

    private static SheetPart part(Draw draw, int match) {
        return new SheetPart(draw.between(1L, 30_000L), draw.between(1L, 20_000L), draw.of(Grain.values()), match);
    }
}
