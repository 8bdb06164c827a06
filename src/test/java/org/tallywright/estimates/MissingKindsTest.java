package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;

class MissingKindsTest {
    @Test
    void asksForWhatBidsOftenForget() {
        assertThat(MissingKinds.of(sheet(task("rip_hardwood", "Rip hardwood to width", HourClass.DIRECT))))
                .hasSize(7)
                .contains("travel", "touch-up", "the punch list visit");
    }

    @Test
    void isContentWithKindsByNameOrHourClass() {
        assertThat(MissingKinds.of(sheet(
                        task("drive", "Drive over", HourClass.TRAVEL),
                        task("supply_run", "Supply run", HourClass.DIRECT),
                        task("finish_prep", "Finish prep: fill, sand, mask", HourClass.DIRECT),
                        task("protect_site", "Protect floors and hang a dust barrier", HourClass.DIRECT),
                        task("hand_over", "Final clean-up and hand-over", HourClass.DIRECT),
                        task("touch_up", "Caulk, fill and touch up", HourClass.DIRECT),
                        task("punch_visit", "Punch list visit", HourClass.DIRECT))))
                .isEmpty();
    }

    @Test
    void saysNothingOfAnEmptyEstimate() {
        assertThat(MissingKinds.of(sheet())).isEmpty();
    }

    private static EstimateSheet sheet(EstimateSheet.TaskRow... tasks) {
        return new EstimateSheet(Stream.of(tasks).toList(), List.of(), List.of(), false);
    }

    private static EstimateSheet.TaskRow task(String code, String name, HourClass hourClass) {
        return new EstimateSheet.TaskRow(
                Ids.next(),
                0,
                "",
                "Mill",
                1,
                code,
                hourClass,
                name,
                Quantity.ONE,
                Unit.EACH,
                UnitHours.of("1"),
                UnitHours.of("1"),
                Hours.ofMinutes(60),
                new EstimateSheet.Lot("", ""));
    }
}
