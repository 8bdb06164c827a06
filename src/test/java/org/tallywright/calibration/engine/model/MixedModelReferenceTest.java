package org.tallywright.calibration.engine.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The same model as lme4 1.1.31 (R 4.2.2) fits by REML to Dyestuff, Dyestuff2 (boundary), Penicillin and Pastes. */
class MixedModelReferenceTest {

    private static final Map<String, List<String>> GROUPINGS = Map.of(
            "Dyestuff", List.of("Batch"),
            "Dyestuff2", List.of("Batch"),
            "Penicillin", List.of("plate", "sample"),
            "Pastes", List.of("sample", "batch"));

    @ParameterizedTest
    @ValueSource(strings = {"Dyestuff", "Dyestuff2", "Penicillin", "Pastes"})
    void reproducesEveryPublishedFigure(String dataset) {
        ReferenceModel reference = read(dataset);
        ModelPoint mode = reference.search.fromPriors();
        int checked = 0;
        for (CSVRecord row : CheckFile.rows("mixed_model_reml.csv")) {
            if (row.get("dataset").equals(dataset)) {
                String parameter = row.get("parameter");
                assertThat(value(reference, mode, GROUPINGS.get(dataset), parameter))
                        .as(dataset + " " + parameter)
                        .isCloseTo(CheckFile.number(row, "value"), within(CheckFile.number(row, "tolerance")));
                checked++;
            }
        }
        assertThat(checked).isGreaterThanOrEqualTo(14);
    }

    static ReferenceModel read(String dataset) {
        List<CSVRecord> rows = CheckFile.rows("mixed_model_data.csv").stream()
                .filter(row -> row.get("dataset").equals(dataset))
                .toList();
        return new ReferenceModel(
                rows.stream()
                        .mapToDouble(row -> CheckFile.number(row, "response"))
                        .toArray(),
                rows.stream().map(row -> row.get("first")).toList(),
                rows.stream()
                        .map(row -> row.get("second"))
                        .filter(level -> !level.isEmpty())
                        .toList());
    }

    private static double value(ReferenceModel reference, ModelPoint mode, List<String> groupings, String parameter) {
        String first = groupings.get(0);
        if (parameter.startsWith("blup_" + first + "_")) {
            return reference.firstEffect(mode, parameter.substring(6 + first.length()));
        }
        if (parameter.startsWith("blup_")) {
            return reference.secondEffect(
                    mode, parameter.substring(6 + groupings.get(1).length()));
        }
        return switch (parameter) {
            case "fixed_intercept" -> reference.intercept(mode);
            case "fixed_intercept_se" -> reference.interceptError(mode);
            case "REML_criterion" -> reference.remlCriterion(mode);
            case "logLik" -> -reference.remlCriterion(mode) / 2;
            default -> sd(reference, mode, groupings, parameter);
        };
    }

    private static double sd(ReferenceModel reference, ModelPoint mode, List<String> groupings, String parameter) {
        String grouping = parameter.substring(parameter.indexOf('_') + 1);
        int k = grouping.equals("Residual") ? 0 : grouping.equals(groupings.get(0)) ? mode.absorbedSd() : 1;
        double sd = reference.sd(mode, k);
        return parameter.startsWith("var_") ? sd * sd : sd;
    }
}
