package org.tallywright.calibration.engine.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** An intercept and one or two groupings with near-flat priors, the response standardised: restricted maximum likelihood. */
final class ReferenceModel {

    static final SdBounds BOUNDS = new SdBounds(-6, -6, 3);
    private static final double FLAT = 1e4;
    private static final LogSdPrior FLAT_SD = new LogSdPrior(-1, 1e5);

    final double centre;
    final double scale;
    final int n;
    final List<String> first;
    final List<String> second;
    final MixedModel model;
    final ModeSearch search;

    ReferenceModel(double[] y, List<String> firstOf, List<String> secondOf) {
        n = y.length;
        centre = Arrays.stream(y).average().orElseThrow();
        scale = Math.sqrt(Arrays.stream(y).map(v -> (v - centre) * (v - centre)).sum() / (n - 1));
        double[] response = Arrays.stream(y).map(v -> (v - centre) / scale).toArray();
        double[] ones = new double[n];
        Arrays.fill(ones, 1);
        first = firstOf.stream().distinct().toList();
        second = secondOf.stream().distinct().toList();
        List<Factor> kept = new ArrayList<>();
        if (!second.isEmpty()) {
            kept.add(Factor.single(second.size(), numbers(secondOf, second), FLAT_SD));
        }
        model = new MixedModel(new ModelData(
                response,
                ones,
                new double[][] {ones},
                new double[] {FLAT},
                kept,
                Factor.single(first.size(), numbers(firstOf, first), FLAT_SD),
                FLAT_SD));
        search = new ModeSearch(model, BOUNDS);
    }

    private static int[] numbers(List<String> levels, List<String> names) {
        return levels.stream().mapToInt(names::indexOf).toArray();
    }

    /** A standard deviation in the units of the data, 0 at the bound. */
    double sd(ModelPoint mode, int k) {
        return search.atLowerBound(mode, k) ? 0 : scale * mode.sd(k);
    }

    double intercept(ModelPoint mode) {
        return centre + scale * mode.coefficients()[0];
    }

    double interceptError(ModelPoint mode) {
        return scale * Math.sqrt(mode.covariance().get(0, 0));
    }

    /** -2 log restricted likelihood, with the constants the reference includes. */
    double remlCriterion(ModelPoint mode) {
        double constant = (n - 1) * (Math.log(2 * Math.PI) + 2 * Math.log(scale));
        return -2 * (mode.logPosterior() + Math.log(FLAT)) + constant;
    }

    double firstEffect(ModelPoint mode, String level) {
        int last = mode.absorbedSd();
        return search.atLowerBound(mode, last) ? 0 : scale * mode.absorbed()[first.indexOf(level)];
    }

    double secondEffect(ModelPoint mode, String level) {
        return scale * mode.coefficients()[1 + second.indexOf(level)];
    }
}
