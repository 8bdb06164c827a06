package org.tallywright.calibration.engine.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleBounds;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.BOBYQAOptimizer;
import org.junit.jupiter.api.Test;

class ModeSearchTest {

    private final MixedModel model = new MixedModel(sampleData(400, 11));

    @Test
    void analyticGradientIsTheSlopeOfTheLogPosterior() {
        double[] theta = {-0.8, -1.5, -2.2, -1.1};
        double[] gradient = model.at(theta).gradient();
        for (int k = 0; k < theta.length; k++) {
            double[] up = theta.clone();
            double[] down = theta.clone();
            up[k] += 1e-5;
            down[k] -= 1e-5;
            double slope = (model.at(up).logPosterior() - model.at(down).logPosterior()) / 2e-5;
            assertThat(gradient[k]).isCloseTo(slope, within(1e-4 * (1 + Math.abs(slope))));
        }
    }

    @Test
    void findsTheModeThatBobyqaFinds() {
        ModelPoint found = new ModeSearch(model, ReferenceModel.BOUNDS).fromPriors();
        double[] other = new BOBYQAOptimizer(10)
                .optimize(
                        new MaxEval(5000),
                        new ObjectiveFunction(theta -> model.at(theta).logPosterior()),
                        GoalType.MAXIMIZE,
                        new InitialGuess(new double[] {-1, -2, -2, -2}),
                        new SimpleBounds(new double[] {-6, -6, -6, -6}, new double[] {3, 3, 3, 3}))
                .getPoint();
        assertThat(found.theta()).containsExactly(other, within(1e-4));
        assertThat(found.logPosterior()).isGreaterThanOrEqualTo(model.at(other).logPosterior() - 1e-9);
    }

    @Test
    void startsAnywhereAndEndsAtTheSameMode() {
        ModelPoint cold = new ModeSearch(model, ReferenceModel.BOUNDS).fromPriors();
        ModelPoint far = new ModeSearch(model, ReferenceModel.BOUNDS).from(new double[] {2, 1, -5, 0});
        assertThat(far.theta()).containsExactly(cold.theta(), within(1e-5));
    }

    @Test
    void withoutAJobIsTheModelThatNeverMetIt() {
        ModelData all = sampleData(60, 3);
        int[] rows = java.util.stream.IntStream.range(0, 60)
                .filter(i -> all.absorbed().level()[i] != 2)
                .toArray();
        ModelData rest = pick(all, rows);
        double[] theta = {-0.9, -1.7, -2, -1.3};
        ModelPoint removed = new MixedModel(all).without(2).at(theta);
        ModelPoint never = new MixedModel(rest).at(theta);
        assertThat(removed.logPosterior()).isCloseTo(never.logPosterior(), within(1e-9));
        assertThat(removed.coefficients()).containsExactly(never.coefficients(), within(1e-10));
        assertThat(removed.gradient()).containsExactly(never.gradient(), within(1e-9));
    }

    @Test
    void withoutDataTheModeIsThePriorsMeanAndTheNinePointsSpreadLikeThePrior() {
        MixedModel empty = new MixedModel(sampleData(0, 1));
        ModelPoint mode = new ModeSearch(empty, ReferenceModel.BOUNDS).fromPriors();
        List<WeightedPoint> points = NinePoints.around(empty, mode, ReferenceModel.BOUNDS);
        assertThat(mode.theta()[0]).isCloseTo(Math.log(0.4), within(1e-9));
        assertThat(points).hasSize(9);
        double mean = 0;
        double square = 0;
        for (WeightedPoint point : points) {
            mean += point.weight() * point.point().theta()[0];
            square += point.weight() * Math.pow(point.point().theta()[0] - mode.theta()[0], 2);
        }
        assertThat(mean).isCloseTo(Math.log(0.4), within(1e-9));
        assertThat(Math.sqrt(square)).as("the prior's own spread").isCloseTo(0.5, within(0.01));
    }

    private static ModelData pick(ModelData all, int[] rows) {
        double[] y = new double[rows.length];
        double[] w = new double[rows.length];
        double[][] x = new double[2][rows.length];
        int[][] level = new int[3][rows.length];
        for (int k = 0; k < rows.length; k++) {
            int i = rows[k];
            y[k] = all.response()[i];
            w[k] = all.weight()[i];
            x[0][k] = all.fixed()[0][i];
            x[1][k] = all.fixed()[1][i];
            level[0][k] = all.factors().get(0).level()[i];
            level[1][k] = all.factors().get(1).level()[i];
            level[2][k] = all.absorbed().level()[i];
        }
        return new ModelData(
                y,
                w,
                x,
                all.fixedSd(),
                List.of(
                        Factor.single(7, level[0], all.factors().get(0).prior()),
                        Factor.single(4, level[1], all.factors().get(1).prior())),
                Factor.single(all.absorbed().levels(), level[2], all.absorbed().prior()),
                all.residual());
    }

    private static ModelData sampleData(int n, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] y = new double[n];
        double[] w = new double[n];
        double[][] x = new double[2][n];
        int[] kind = new int[n];
        int[] worker = new int[n];
        int[] job = new int[n];
        int jobs = Math.max(1, n / 8);
        for (int i = 0; i < n; i++) {
            x[0][i] = 1;
            x[1][i] = random.nextDouble(-2, 2);
            kind[i] = random.nextInt(7);
            worker[i] = random.nextInt(4);
            job[i] = random.nextInt(jobs);
            w[i] = random.nextDouble(0.3, 2);
            y[i] = 0.1 * kind[i] - 0.1 * x[1][i] + 0.05 * (job[i] % 5) + random.nextDouble(-0.8, 0.8);
        }
        return new ModelData(
                y,
                w,
                x,
                new double[] {0.3, 0.15},
                List.of(
                        Factor.single(7, kind, LogSdPrior.around(0.15, 0.7)),
                        Factor.single(4, worker, LogSdPrior.around(0.1, 0.7))),
                Factor.single(jobs, job, LogSdPrior.around(0.15, 0.7)),
                LogSdPrior.around(0.4, 0.5));
    }
}
