package org.tallywright.calibration.engine.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

/** Efron and Morris 1975, 1977: eighteen batting averages shrunk towards their mean by the factor 0.212. */
class ShrinkageReferenceTest {

    private final List<CSVRecord> players = CheckFile.rows("efron_morris.csv");
    private final double[] first = players.stream()
            .mapToDouble(row -> CheckFile.number(row, "first_45"))
            .toArray();
    private final double mean = 0.265432;
    private final double samplingVariance = mean * (1 - mean) / 45;

    @Test
    void theModelsEffectsAreThePublishedEstimates() {
        ReferenceModel reference = new ReferenceModel(
                first, players.stream().map(row -> row.get("player")).toList(), List.of());
        ModelPoint point = reference.model.at(theta(reference, 0.212));
        for (CSVRecord player : players) {
            double estimate = reference.intercept(point) + reference.firstEffect(point, player.get("player"));
            assertThat(estimate)
                    .as(player.get("player"))
                    .isCloseTo(
                            CheckFile.number(player, "estimate"), within(CheckFile.number(player, "tolerance") + 1e-4));
        }
    }

    @Test
    void shrinkingCutsTheTotalSquaredErrorByThePublishedFactor() {
        double square = 0;
        for (double average : first) {
            square += (average - mean) * (average - mean);
        }
        double factor = 1 - (first.length - 3) * samplingVariance / square;
        assertThat(factor).isCloseTo(0.2117, within(0.002));
        ReferenceModel reference = new ReferenceModel(
                first, players.stream().map(row -> row.get("player")).toList(), List.of());
        ModelPoint point = reference.model.at(theta(reference, factor));
        double averages = 0;
        double shrunk = 0;
        for (int k = 0; k < first.length; k++) {
            double rest = CheckFile.number(players.get(k), "rest");
            String name = players.get(k).get("player");
            averages += Math.pow(first[k] - rest, 2);
            shrunk += Math.pow(reference.intercept(point) + reference.firstEffect(point, name) - rest, 2);
        }
        assertThat(averages / shrunk).as("about 3.5 in the papers").isCloseTo(3.535, within(0.03));
    }

    /** Known sampling variance; the sd between players that makes the factor tau^2/(tau^2 + sigma^2). */
    private double[] theta(ReferenceModel reference, double factor) {
        double sigma = Math.sqrt(samplingVariance);
        double tau = sigma * Math.sqrt(factor / (1 - factor));
        return new double[] {Math.log(sigma / reference.scale), Math.log(tau / reference.scale)};
    }
}
