package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.tallywright.Draw;
import org.tallywright.Tries;
import org.tallywright.estimates.EstimateSheet.Lot;
import org.tallywright.estimates.EstimateSheet.OtherRow;
import org.tallywright.estimates.EstimateSheet.TaskRow;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;

/** The price is the sum of its lines to the cent, in whatever order they stand. */
class LinesInAnyOrderTest {
    private static final Lot FREE = new Lot("", "");

    @Test
    void comeToTheSamePrice() {
        Tries.of(500, LinesInAnyOrderTest::isTheSame);
    }

    private static void isTheSame(Draw draw) {
        List<TaskRow> tasks = new ArrayList<>();
        List<OtherRow> others = new ArrayList<>();
        for (int n = (int) draw.between(1, 12); n > 0; n--) {
            tasks.add(task((int) draw.between(0, 6000)));
            others.add(new OtherRow(
                    UUID.randomUUID(), 0, CostSort.OTHER, "", Money.ofCents(draw.between(0, 99_999)), FREE));
        }
        PriceSum sum = price(new EstimateSheet(tasks, List.of(), others, false));
        Random order = new Random(draw.between(0, 1_000_000));
        Collections.shuffle(tasks, order);
        Collections.shuffle(others, order);

        assertThat(price(new EstimateSheet(tasks, List.of(), others, false))).isEqualTo(sum);
        assertThat(sum.labour()
                        .plus(sum.material())
                        .plus(sum.other())
                        .plus(sum.overhead())
                        .plus(sum.contingency())
                        .plus(sum.margin())
                        .plus(sum.rounding()))
                .isEqualTo(sum.price());
    }

    private static PriceSum price(EstimateSheet sheet) {
        return PriceSum.of(new PriceBasis(
                sheet.next().hours(),
                Money.of("49.40"),
                Money.of("15"),
                sheet.next().material(),
                sheet.next().other(),
                Contingency.named(Percent.of("7.5")),
                Margin.of("15"),
                Money.of("5"),
                Percent.of("8.875")));
    }

    private static TaskRow task(int minutes) {
        return new TaskRow(
                UUID.randomUUID(),
                0,
                "",
                "Mill",
                1,
                "rip",
                HourClass.DIRECT,
                "Rip",
                Quantity.of(1),
                Unit.of("lf"),
                UnitHours.of("1"),
                UnitHours.of("1"),
                Hours.ofMinutes(minutes),
                FREE);
    }
}
