package org.tallywright.calibration.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** How far prices and crews stray, from nothing known to much. */
class CostScatterTest {
    private static PriceScatter.Steps steps(String material, int count, double each) {
        return new PriceScatter.Steps(material, count, count * each * each);
    }

    @Test
    void withoutAPurchasePricesMoveByFivePerCent() {
        PriceScatter nothing = PriceScatter.learn(List.of());
        assertThat(nothing.of("oak")).isCloseTo(0.05, within(1e-12));
        assertThat(nothing.steps("oak")).isZero();
    }

    /** (4 x 0.05^2 + 0.20^2)/5 = 0.0100 for the shop, (4 x 0.0100 + 0.20^2)/5 = 0.0160 for oak: worked by hand. */
    @Test
    void oneStepIsShrunkToTheShopAndTheShopToTheStart() {
        PriceScatter one = PriceScatter.learn(List.of(steps("oak", 1, 0.20)));
        assertThat(one.of("pine")).isCloseTo(0.1, within(1e-12));
        assertThat(one.of("oak")).isCloseTo(Math.sqrt(0.016), within(1e-12));
    }

    @Test
    void manyStepsSpeakForThemselves() {
        PriceScatter many = PriceScatter.learn(List.of(steps("oak", 400, 0.2), steps("pine", 400, 0.02)));
        assertThat(many.of("oak")).isCloseTo(0.2, within(0.002));
        assertThat(many.of("pine")).isCloseTo(0.02, within(0.005));
        assertThat(many.steps("oak")).isEqualTo(400);
    }

    @Test
    void aShopWithoutMixedCrewsHasTheStartingSpread() {
        assertThat(CrewScatter.learn(List.of()).spread()).isEqualTo(0.4);
        CrewScatter alone = CrewScatter.learn(List.of(List.of(new CrewScatter.Share(1, 1))));
        assertThat(alone.spread()).isEqualTo(0.4);
        assertThat(alone.jobs()).isZero();
    }

    @Test
    void crewsThatKeepTheirSharesNarrowIt() {
        List<CrewScatter.Share> kept = List.of(new CrewScatter.Share(0.5, 0.5), new CrewScatter.Share(0.5, 0.5));
        CrewScatter four = CrewScatter.learn(List.of(kept, kept, kept, kept));
        assertThat(four.spread()).isCloseTo(0.4 / Math.sqrt(2), within(1e-12));
        assertThat(four.jobs()).isEqualTo(4);
    }

    /** Crews drawn from the model itself, seed 5: the spread comes out again. */
    @Test
    void findsTheSpreadThatMadeTheCrews() {
        Random random = new Random(5);
        List<List<CrewScatter.Share>> jobs = new ArrayList<>();
        for (int job = 0; job < 2000; job++) {
            double a = 0.5 * Math.exp(0.25 * random.nextGaussian());
            double b = 0.3 * Math.exp(0.25 * random.nextGaussian());
            double c = 0.2 * Math.exp(0.25 * random.nextGaussian());
            double all = a + b + c;
            jobs.add(List.of(
                    new CrewScatter.Share(0.5, a / all),
                    new CrewScatter.Share(0.3, b / all),
                    new CrewScatter.Share(0.2, c / all)));
        }
        assertThat(CrewScatter.learn(jobs).spread()).isCloseTo(0.25, within(0.01));
    }
}
