package org.tallywright.cutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** What may be said of a plan that uses offcuts. */
class OffcutsFirstTest {
    private static final SheetStock SHEET = new SheetStock(96, 48);

    /**
     * The smaller offcut holds the two squares or the long part, the larger only the squares: filled with the most area from the
     * small one on, the long part would be bought.
     */
    @Test
    void fillsTheLargeOffcutFirstWhereThatBuysLess() {
        SheetPlan plan = plan(
                List.of(new SheetStock(20, 11), new SheetStock(23, 10)),
                List.of(along(10, 10), along(10, 10), along(18, 11)));

        assertThat(plan.bought()).isZero();
        assertThat(plan.answer()).isEqualTo(Answer.PROVED);
    }

    /** The offcuts have the area of all parts, so that nobody has shown that a sheet must be bought. */
    @Test
    void provesNothingWhereTheOffcutsHaveTheArea() {
        SheetPlan plan = plan(
                List.of(new SheetStock(20, 11), new SheetStock(20, 11)),
                List.of(along(11, 11), along(11, 11), along(11, 11)));

        assertThat(plan.bought()).isEqualTo(1);
        assertThat(plan.areaBound()).isZero();
        assertThat(plan.answer()).isEqualTo(Answer.SEARCHED);
    }

    @Test
    void provesTheSheetThatNoOffcutSaves() {
        // Longer than any offcut.
        SheetPlan longer = plan(List.of(new SheetStock(90, 48)), List.of(along(95, 10), along(40, 40)));
        assertThat(longer.bought()).isEqualTo(1);
        assertThat(longer.answer()).isEqualTo(Answer.PROVED);
        // More area than the offcut has.
        SheetPlan more = plan(List.of(new SheetStock(20, 10)), List.of(along(20, 10), along(15, 10)));
        assertThat(more.bought()).isEqualTo(1);
        assertThat(more.answer()).isEqualTo(Answer.PROVED);
    }

    private static SheetPlan plan(List<SheetStock> offcuts, List<SheetPart> parts) {
        SheetPlan plan = SheetPlanner.plan(SHEET, offcuts, parts, 0, 0);
        SheetCheck.check(plan, SHEET, offcuts, parts, 0, 0);
        return plan;
    }

    private static SheetPart along(long length, long width) {
        return new SheetPart(length, width, Grain.ALONG, 0);
    }
}
