package org.tallywright.calibration.engine.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

/** NIST Statistical Reference Datasets: certified one-way analyses of variance and univariate summaries, as far as they apply. */
class NistReferenceTest {

    /** In a balanced one-way layout with F above 1 REML gives MSW and (MSB - MSW)/n exactly (Searle, Casella, McCulloch). */
    @Test
    void varianceComponentsFollowTheCertifiedSumsOfSquares() {
        for (CSVRecord certified : CheckFile.rows("nist_anova.csv")) {
            String dataset = certified.get("dataset");
            List<CSVRecord> rows = of("nist_anova_data.csv", dataset);
            ReferenceModel reference = new ReferenceModel(
                    values(rows), rows.stream().map(row -> row.get("group")).toList(), List.of());
            ModelPoint mode = reference.search.fromPriors();
            double n = CheckFile.number(certified, "n");
            double groups = CheckFile.number(certified, "groups");
            double within = CheckFile.number(certified, "ss_within") / (n - groups);
            double between = CheckFile.number(certified, "ss_between") / (groups - 1);
            assertThat(Math.pow(reference.sd(mode, 0), 2) / within).as(dataset).isCloseTo(1, within(2e-4));
            assertThat(Math.pow(reference.sd(mode, 1), 2) / ((between - within) / (n / groups)))
                    .as(dataset)
                    .isCloseTo(1, within(2e-3));
            assertThat(between / within).as(dataset).isCloseTo(CheckFile.number(certified, "F"), within(1e-6));
        }
    }

    @Test
    void meanAndResidualSdAreTheCertifiedOnes() {
        for (CSVRecord certified : CheckFile.rows("nist_univariate.csv")) {
            String dataset = certified.get("dataset");
            double[] values = dataset.equals("NumAcc3") ? numAcc3() : values(of("nist_univariate_data.csv", dataset));
            ReferenceModel reference =
                    new ReferenceModel(values, Collections.nCopies(values.length, "one group"), List.of());
            ModelPoint mode = reference.search.fromPriors();
            double mean = CheckFile.number(certified, "mean");
            assertThat(reference.intercept(mode) / mean).as(dataset).isCloseTo(1, within(1e-12));
            assertThat(reference.sd(mode, 0) / CheckFile.number(certified, "sd"))
                    .as(dataset)
                    .isCloseTo(1, within(1e-5));
        }
    }

    /** NumAcc3 by its definition: 1000000.2, then 1000000.1 and 1000000.3 by turns, 1001 values. */
    private static double[] numAcc3() {
        List<Double> values = new ArrayList<>(List.of(1_000_000.2));
        for (int k = 0; k < 1000; k++) {
            values.add(k % 2 == 0 ? 1_000_000.1 : 1_000_000.3);
        }
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static List<CSVRecord> of(String file, String dataset) {
        return CheckFile.rows(file).stream()
                .filter(row -> row.get("dataset").equals(dataset))
                .toList();
    }

    private static double[] values(List<CSVRecord> rows) {
        return rows.stream().mapToDouble(row -> CheckFile.number(row, "value")).toArray();
    }
}
