package org.tallywright.calibration.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class MaterialYieldsTest {

    private static YieldObservation seen(int i, String material, String condition, double yield) {
        return new YieldObservation(
                material,
                condition,
                "j" + i,
                40,
                40 * yield,
                0.85,
                LocalDate.of(2026, 1, 1).plusDays(i));
    }

    @Test
    void withoutPurchasesItIsTheStartingYieldWithARange() {
        YieldForecast forecast = MaterialYields.learn(List.of()).forecast("red oak", "", 0.85);
        assertThat(forecast.yield().median()).isCloseTo(0.85, within(0.005));
        assertThat(forecast.yield().low80()).isBetween(0.65, 0.78);
        assertThat(forecast.yield().high80()).isBetween(0.93, 1.0);
        assertThat(forecast.startingShare()).isEqualTo(1);
        assertThat(forecast.toBuy(34)).isCloseTo(40, within(0.3));
        assertThat(forecast.toBuy(34, 0.9)).isGreaterThan(44);
    }

    @Test
    void purchasesMoveItTowardsWhatTheyGaveMaterialByMaterial() {
        List<YieldObservation> purchases = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            purchases.add(seen(i, "red oak", "", 0.70 + 0.02 * (i % 3)));
            purchases.add(seen(i, "plywood", "", 0.88 + 0.02 * (i % 3)));
        }
        MaterialYields yields = MaterialYields.learn(purchases);
        YieldForecast oak = yields.forecast("red oak", "", 0.85);
        YieldForecast plywood = yields.forecast("plywood", "", 0.85);
        assertThat(oak.yield().median()).isBetween(0.70, 0.78);
        assertThat(plywood.yield().median()).isBetween(0.84, 0.92);
        assertThat(oak.observations()).isEqualTo(16);
        assertThat(oak.startingShare()).isLessThan(0.3);
        assertThat(plywood.yield().quantile(1)).isLessThanOrEqualTo(1);
    }

    @Test
    void aPurchaseIsReadUnderItsCondition() {
        List<YieldObservation> purchases = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            purchases.add(seen(i, "red oak", i % 2 == 0 ? "clear grade" : "common grade", i % 2 == 0 ? 0.9 : 0.7));
        }
        MaterialYields yields = MaterialYields.learn(purchases);
        assertThat(yields.forecast("red oak", "clear grade", 0.85).yield().median())
                .isGreaterThan(1.1
                        * yields.forecast("red oak", "common grade", 0.85)
                                .yield()
                                .median());
    }

    @Test
    void nothingBoughtOrNothingUsedIsLeftOutAndNoted() {
        MaterialYields yields = MaterialYields.learn(List.of(seen(1, "red oak", "", 0)));
        assertThat(yields.notes()).extracting(Note::treatment).containsExactly(Note.Treatment.NO_HOURS);
        assertThat(yields.forecast("red oak", "", 0.85).observations()).isZero();
    }
}
