package org.tallywright.cutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Matching parts on sheets of 96 x 48. */
class MatchingTest {
    private static final SheetStock SHEET = new SheetStock(96, 48);
    private static final SheetPart DOOR = new SheetPart(30, 20, Grain.ALONG, 1);

    @Test
    void laysSideBySideWhatFits() {
        SheetPlan plan = planned(Collections.nCopies(2, DOOR));

        assertThat(plan.sheets().get(0).parts()).extracting(Region::x).containsExactly(0L, 0L);
        assertThat(plan.parted()).isEmpty();
    }

    /** 30 x 60 is wider than a sheet, 90 x 20 is not. */
    @Test
    void laysEndToEndWhatIsTooWideSideBySide() {
        SheetPlan plan = planned(Collections.nCopies(3, new SheetPart(30, 25, Grain.ALONG, 1)));

        assertThat(plan.bought()).isEqualTo(1);
        assertThat(plan.sheets().get(0).parts()).extracting(Region::x).containsExactly(0L, 30L, 60L);
        assertThat(plan.unplaced()).isEmpty();
        assertThat(planned(Collections.nCopies(3, DOOR)).unplaced()).isEmpty();
    }

    @Test
    void laysSeveralRows() {
        SheetPlan plan = planned(Collections.nCopies(6, DOOR));

        assertThat(plan.bought()).isEqualTo(1);
        assertThat(plan.parted()).isEmpty();
        assertThat(plan.sheets().get(0).parts()).extracting(Region::x).containsExactly(0L, 0L, 30L, 30L, 60L, 60L);
        // Even rows: 3 and 3, where 4 and 2 would go as well.
        SheetPlan even = planned(Collections.nCopies(6, new SheetPart(40, 12, Grain.ALONG, 1)));
        assertThat(even.sheets().get(0).parts()).extracting(Region::x).containsExactly(0L, 0L, 0L, 40L, 40L, 40L);
    }

    @Test
    void partsAGroupThatNoSheetTakes() {
        SheetPlan plan = planned(Collections.nCopies(7, DOOR));

        assertThat(plan.bought()).isEqualTo(2);
        assertThat(plan.unplaced()).isEmpty();
        assertThat(plan.parted()).containsExactly(new SheetPlan.Parted(1, 2));
    }

    @Test
    void leavesOutOnlyTheMemberThatIsTooLarge() {
        SheetPlan plan = planned(List.of(new SheetPart(100, 20, Grain.ALONG, 1), DOOR, DOOR));

        assertThat(plan.unplaced()).containsExactly(0);
        assertThat(plan.bought()).isEqualTo(1);
        assertThat(plan.parted()).isEmpty();
    }

    /** Side by side they are 30 x 60, and 60 x 30 turned. */
    @Test
    void turnsAGroupWithoutGrain() {
        SheetPlan plan = planned(Collections.nCopies(3, new SheetPart(30, 20, Grain.ANY, 1)));

        assertThat(plan.sheets().get(0).parts()).extracting(Region.Part::turned).containsOnly(true);
        assertThat(plan.parted()).isEmpty();
    }

    @Test
    void laysPartsOfOneWidthEndToEndFirst() {
        SheetPart longer = new SheetPart(40, 20, Grain.ALONG, 1);
        SheetPlan plan = planned(List.of(DOOR, longer));
        assertThat(plan.sheets().get(0).parts()).extracting(Region::x).containsExactly(0L, 30L);
        // 30, 40 and 50 are longer than a sheet: two in the first row.
        SheetPlan three = planned(List.of(DOOR, longer, new SheetPart(50, 20, Grain.ALONG, 1)));
        assertThat(three.bought()).isEqualTo(1);
        assertThat(three.parted()).isEmpty();
    }

    /** Ten thousand matching parts are arranged as fast as others. */
    @Test
    void partsTenThousand() {
        List<SheetPart> parts = new ArrayList<>(Collections.nCopies(10_000, new SheetPart(2, 3, Grain.ALONG, 1)));

        SheetPlan plan = SheetPlanner.plan(SHEET, List.of(), parts, 0, 0);

        assertThat(plan.unplaced()).isEmpty();
        assertThat(plan.bought()).isEqualTo(14);
        assertThat(plan.parted()).containsExactly(new SheetPlan.Parted(1, 14));
    }

    private static SheetPlan planned(List<SheetPart> parts) {
        SheetPlan plan = SheetPlanner.plan(SHEET, List.of(), parts, 0, 0);
        SheetCheck.check(plan, SHEET, List.of(), parts, 0, 0);
        return plan;
    }
}
