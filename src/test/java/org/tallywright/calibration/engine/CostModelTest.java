package org.tallywright.calibration.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.tallywright.calibration.engine.model.CommonDraws;

class CostModelTest {
    private static final TotalSettings SETTINGS = TotalSettings.standard();
    private static final Draws NO_HOURS = flat(0);
    private static final CostModel.Hour NOTHING = new CostModel.Hour(0, List.of(), 0, 0);

    private final CostModel model = new CostModel(SETTINGS);

    private static Draws flat(double value) {
        double[] all = new double[SETTINGS.draws()];
        Arrays.fill(all, value);
        return Draws.of(all);
    }

    /** exp(mu + s z), the normal scores in an order of their own. */
    private static Draws lognormal(String name, double mu, double s) {
        double[] z = new CommonDraws(SETTINGS.draws(), SETTINGS.seed()).normals(name);
        return Draws.of(Arrays.stream(z).map(x -> Math.exp(mu + s * x)).toArray());
    }

    private static CostModel.Material oak(double net, Draws yields, double scatter) {
        return new CostModel.Material("oak", net, yields, 1, 13.40, scatter, 12);
    }

    private static double variance(Draws draws) {
        double mean = draws.mean();
        return Arrays.stream(draws.values()).map(x -> (x - mean) * (x - mean)).sum() / draws.count();
    }

    private static double quantile(Draws draws, double p) {
        return Distribution.ofDraws(draws.values()).quantile(p);
    }

    /** 6.5 h x (49.40 + 15), 27 bf net at 0.60 buys 45 at 13.40 and 12 freight, 45.50 else: worked by hand. */
    @Test
    void withoutUncertaintyItIsTheOneFormula() {
        CostModel.Cost cost = model.draws(
                flat(6.5), new CostModel.Hour(49.40, List.of(), 0, 15), List.of(oak(27, flat(0.6), 0)), 45.50);
        assertThat(Arrays.stream(cost.total().values())).allMatch(c -> Math.abs(c - (418.60 + 615 + 45.50)) < 1e-9);
        assertThat(cost.materials().mean()).isCloseTo(615, within(1e-9));
    }

    /** One sheet at 172 and five at 172 with 12 freight: bought as laid out in every draw, 172 and 872. */
    @Test
    void aLayoutThatIsCertainCostsItsLineAmount() {
        for (int sheets : new int[] {1, 5}) {
            CostModel.Material ply =
                    new CostModel.Material("ply", new CostModel.LaidOut(sheets, sheets, 0), 172, 0, 12);
            Draws cost = model.draws(NO_HOURS, NOTHING, List.of(ply), 0).materials();
            assertThat(Arrays.stream(cost.values())).allMatch(c -> Math.abs(c - (172 * sheets + 12)) < 1e-9);
        }
        CostModel.Material moving = new CostModel.Material("ply", new CostModel.LaidOut(5, 5, 0), 172, 0.05, 12);
        assertThat(model.draws(NO_HOURS, NOTHING, List.of(moving), 0)
                        .materials()
                        .mean())
                .isCloseTo(872, within(0.1));
    }

    /** 40 bf half the time and 50 four times in five, at 10: 400 and 500; a lognormal's nine in ten is 40 exp(1.2816 w). */
    @Test
    void boardsAreLikelyInTheMiddleAndSafeAtFourInFive() {
        CostModel.Material oak = new CostModel.Material("oak", new CostModel.LaidOut(40, 50, 0), 10, 0, 0);
        Draws cost = model.draws(NO_HOURS, NOTHING, List.of(oak), 0).materials();
        double w = Math.log(50.0 / 40) / 0.8416212;
        assertThat(quantile(cost, 0.5)).isCloseTo(400, within(0.5));
        assertThat(quantile(cost, 0.8)).isCloseTo(500, within(1.0));
        assertThat(quantile(cost, 0.9)).isCloseTo(400 * Math.exp(1.2815516 * w), within(2.5));
        assertThat(cost.mean()).isCloseTo(400 * Math.exp(w * w / 2), within(2.0));
    }

    /**
     * The mean of max(0, L exp(w z) - K) is L exp(w^2/2) F((ln(L/K) + w^2)/w) - K F(ln(L/K)/w), F the normal distribution, worked by
     * hand: 50 bf agreed and 51 likely, 56 safe leave 2.96 to buy; with 60 safe 4.98. As differences drawn lognormal they were 9.6 and 42.
     */
    @Test
    void boardsBeyondWhatIsCoveredAreDrawnOfTheWholeNeed() {
        for (double[] row : new double[][] {{6, 2.963}, {10, 4.978}}) {
            CostModel.Material oak = new CostModel.Material("oak", new CostModel.LaidOut(1, row[0], 50), 10, 0, 0);
            Draws cost = model.draws(NO_HOURS, NOTHING, List.of(oak), 0).materials();
            assertThat(cost.mean()).isCloseTo(10 * row[1], within(0.3));
            assertThat(quantile(cost, 0.5)).isCloseTo(10, within(0.6));
            assertThat(quantile(cost, 0.8)).isCloseTo(10 * row[0], within(1.2));
            assertThat(Arrays.stream(cost.values())).allMatch(c -> c >= 0);
        }
    }

    /** Lognormal facts (any text on statistics): median exp(mu), mean exp(mu + s^2/2), quantile exp(mu + s z_p). */
    @Test
    void aPriceThatMovesKeepsItsMeanAndHasTheLognormalsQuantiles() {
        double s = 0.2;
        Draws cost = model.draws(NO_HOURS, NOTHING, List.of(oak(27, flat(0.6), s)), 0)
                .materials();
        assertThat(cost.mean()).isCloseTo(603 + 12, within(0.15));
        assertThat(quantile(cost, 0.9) - 12).isCloseTo(603 * Math.exp(s * 1.2815516 - s * s / 2), within(1.5));
        assertThat(quantile(cost, 0.5) - 12).isCloseTo(603 * Math.exp(-s * s / 2), within(1.0));
    }

    /** Variances of independent amounts add; for a lognormal it is mean^2 (exp(s^2) - 1). */
    @Test
    void hoursPricesAndOtherMaterialsMoveIndependently() {
        Draws hours = lognormal("hours", 3, 0.25);
        CostModel.Hour hour = new CostModel.Hour(50, List.of(), 0, 10);
        CostModel.Material pine = new CostModel.Material("pine", 100, flat(1), 1, 5, 0.15, 0);
        Draws cost = model.draws(hours, hour, List.of(oak(27, flat(0.6), 0.2), pine), 100)
                .total();
        double labour = 60 * Math.exp(3 + 0.25 * 0.25 / 2);
        double expected = labour * labour * Math.expm1(0.0625)
                + 603.0 * 603 * Math.expm1(0.04)
                + 500.0 * 500 * Math.expm1(0.0225);
        assertThat(variance(cost) / expected).isCloseTo(1, within(0.06));
        assertThat(cost.mean()).isCloseTo(labour + 603 + 12 + 500 + 100, within(1.5));
    }

    @Test
    void twoLinesOfAMaterialShareItsPriceAndItsYield() {
        Draws yields = MaterialYields.learn(List.of()).draws("oak", "", 0.6);
        Draws one =
                model.draws(NO_HOURS, NOTHING, List.of(oak(54, yields, 0.1)), 0).total();
        Draws two = model.draws(NO_HOURS, NOTHING, List.of(oak(27, yields, 0.1), oak(27, yields, 0.1)), 0)
                .total();
        assertThat(Math.sqrt(variance(two) / variance(one))).isCloseTo(1, within(0.01));
    }

    @Test
    void waterTheYieldAndTheCostRises() {
        MaterialYields nothing = MaterialYields.learn(List.of());
        double dry = model.draws(NO_HOURS, NOTHING, List.of(oak(27, nothing.draws("oak", "", 0.8), 0)), 0)
                .materials()
                .mean();
        double wet = model.draws(NO_HOURS, NOTHING, List.of(oak(27, nothing.draws("oak", "", 0.4), 0)), 0)
                .materials()
                .mean();
        assertThat(wet / dry).isBetween(1.9, 2.1);
    }

    @Test
    void yieldsDoNotFollowTheHours() {
        Draws yields = MaterialYields.learn(List.of()).draws("oak", "", 0.6);
        Draws hours = Calibrator.fit(List.of(), CalibrationSettings.standard(), LocalDate.EPOCH)
                .jobForecast(List.of(PlannedTask.of("one", "kind", 8)))
                .draws();
        assertThat(correlation(yields, hours)).isBetween(-0.08, 0.08);
    }

    private static double correlation(Draws one, Draws other) {
        double sum = 0;
        for (int d = 0; d < one.count(); d++) {
            sum += (one.at(d) - one.mean()) * (other.at(d) - other.mean());
        }
        return sum / one.count() / Math.sqrt(variance(one) * variance(other));
    }

    @Test
    void aMixedCrewCostsThePlannedRateInTheMeanAndStaysBetweenItsPeople() {
        List<CostModel.Worker> crew =
                List.of(new CostModel.Worker("ada", 0.6, 60), new CostModel.Worker("jonas", 0.4, 30));
        double[] rates = model.rates(new CostModel.Hour(48, crew, 0.4, 0));
        assertThat(Arrays.stream(rates).average().orElseThrow()).isCloseTo(48, within(1e-9));
        assertThat(Arrays.stream(rates)).allMatch(rate -> rate > 29.5 && rate < 60.5);
        assertThat(Math.sqrt(variance(Draws.of(rates)))).isBetween(3.0, 5.0);
    }

    @Test
    void peopleOfOneRateLeaveTheRateAlone() {
        List<CostModel.Worker> crew =
                List.of(new CostModel.Worker("ada", 0.6, 48), new CostModel.Worker("jonas", 0.4, 48));
        assertThat(model.rates(new CostModel.Hour(48, crew, 0.4, 0))).containsOnly(48.0);
    }

    /** The other lines keep their draws, so a per cent more of one line is no more than a per cent of its cost. */
    @Test
    void anEditToOneLineMovesEveryFigureSmoothly() {
        Draws hours = lognormal("hours", 3, 0.25);
        CostModel.Hour hour = new CostModel.Hour(50, List.of(), 0, 10);
        Draws yields = MaterialYields.learn(List.of()).draws("oak", "", 0.6);
        double last = 0;
        for (int step = 0; step < 20; step++) {
            double net = 200 * (1 + step / 100.0);
            Draws cost =
                    model.draws(hours, hour, List.of(oak(net, yields, 0.1)), 0).total();
            double p80 = quantile(cost, 0.8);
            if (step > 0) {
                assertThat(p80 - last).as("net %s", net).isBetween(0.3 * 44.7, 1.7 * 44.7);
            }
            last = p80;
        }
        Draws longer = model.draws(lognormal("hours", 3.01, 0.25), hour, List.of(oak(200, yields, 0.1)), 0)
                .total();
        Draws shorter =
                model.draws(hours, hour, List.of(oak(200, yields, 0.1)), 0).total();
        for (int d = 0; d < longer.count(); d++) {
            assertThat(longer.at(d) - shorter.at(d)).isBetween(0.0, 0.0101 * 60 * hours.at(d));
        }
    }
}
