package org.tallywright.takeoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.tallywright.cutting.Answer;
import org.tallywright.cutting.Grain;
import org.tallywright.cutting.Region;
import org.tallywright.cutting.SheetPlan;
import org.tallywright.cutting.SheetStock;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;

class DrawingsTest {
    private static final long INCH = Length.INCH;

    /** Fibreboard has no grain: nothing on it asks for one. */
    @Test
    void grainIsDrawnOnlyWhereAPartHasOne() {
        assertThat(drawn(Grain.ANY).grain()).isFalse();
        assertThat(drawn(Grain.ANY).facts()).noneMatch(fact -> fact.contains("grain"));
        for (Grain grain : List.of(Grain.ALONG, Grain.ACROSS)) {
            assertThat(drawn(grain).grain()).isTrue();
            assertThat(drawn(grain).facts()).contains("grain along the 97\"");
        }
    }

    private static Drawing drawn(Grain grain) {
        PartDetails part = new PartDetails(
                "Panel", 1, new Length(97 * INCH), new Length(49 * INCH), null, "", grain, "", 0, 0, 2, 0);
        PartRows.Row row = new PartRows.Row(new UUID(0, 1), new UUID(0, 2), "Case", 1, 1, part, true, "", 1);
        SheetPlan.Sheet sheet = new SheetPlan.Sheet(
                new SheetStock(97 * INCH, 49 * INCH), -1, new Region.Part(0, 0, 97 * INCH, 49 * INCH, 0, false));
        SheetPlan plan = new SheetPlan(List.of(sheet), List.of(), List.of(), 1, Answer.PROVED);
        return new Drawings(Units.IMPERIAL).sheets(plan, List.of(row), 0, 0, 0).get(0);
    }
}
