package org.tallywright.calibration.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.tallywright.calibration.engine.model.CheckFile;

/** Worked examples of three published exercises; the sources stand in the file. */
class EarnedValueTest {

    @Test
    void reproducesTheWorkedExamples() {
        for (CSVRecord row : CheckFile.rows("earned_value.csv")) {
            EarnedValue value = new EarnedValue(
                    CheckFile.number(row, "budget"),
                    CheckFile.number(row, "planned"),
                    CheckFile.number(row, "earned"),
                    CheckFile.number(row, "actual"));
            assertThat(figure(value, row.get("check")))
                    .as(row.get("id") + " " + row.get("check"))
                    .isCloseTo(CheckFile.number(row, "expected"), within(CheckFile.number(row, "tolerance") + 1e-9));
        }
    }

    private static double figure(EarnedValue value, String check) {
        return switch (check) {
            case "PV" -> value.planned();
            case "EV" -> value.earned();
            case "AC" -> value.actual();
            case "CV" -> value.costVariance();
            case "SV" -> value.scheduleVariance();
            case "CPI" -> value.costIndex().orElseThrow();
            case "SPI" -> value.scheduleIndex().orElseThrow();
            case "EAC (CPI)" -> value.atCompletion().orElseThrow();
            case "ETC (CPI)" -> value.toComplete().orElseThrow();
            case "VAC (CPI)", "VAC" -> value.varianceAtCompletion().orElseThrow();
            case "EAC (remaining work at plan)" -> value.atCompletionAtPlan();
            case "EAC (composite)" -> value.atCompletionByCostAndSchedule().orElseThrow();
            case "EAC (schedule only)" -> value.atCompletionBySchedule().orElseThrow();
            case "TCPI (BAC)" -> value.toCompleteIndex(value.budget()).orElseThrow();
            case "TCPI (EAC 4480)" -> value.toCompleteIndex(4480).orElseThrow();
            case "CV percent" -> value.costVariancePercent().orElseThrow();
            case "SV percent" -> value.scheduleVariancePercent().orElseThrow();
            case "percent complete" -> value.percentComplete().orElseThrow();
            case "percent spent" -> value.percentSpent().orElseThrow();
            case "time estimate" -> value.length(6).orElseThrow();
            default -> throw new AssertionError("no figure is called " + check);
        };
    }

    @Test
    void hasNoIndexWhereNothingIsLoggedOrPlanned() {
        EarnedValue start = new EarnedValue(100, 0, 0, 0);
        assertThat(start.costIndex()).isEmpty();
        assertThat(start.scheduleIndex()).isEmpty();
        assertThat(start.atCompletion()).isEmpty();
        assertThat(start.toComplete()).isEmpty();
    }

    @Test
    void aFinishedJobEndsAtItsActual() {
        EarnedValue done = new EarnedValue(100, 100, 100, 130);
        assertThat(done.atCompletion().orElseThrow()).isEqualTo(130);
        assertThat(done.toComplete().orElseThrow()).isZero();
    }

    @Test
    void hasNoIndexToCompleteOnceTheTargetIsSpent() {
        assertThat(new EarnedValue(1000, 600, 500, 1000).toCompleteIndex(1000)).isEmpty();
    }

    @Test
    void callsTheIndexNoiseWhileLittleIsDone() {
        assertThat(new EarnedValue(100, 30, 30, 40).cpiIsNoise(4)).isTrue();
        assertThat(new EarnedValue(100, 10, 10, 12).cpiIsNoise(8)).isTrue();
        assertThat(new EarnedValue(100, 30, 30, 40).cpiIsNoise(5)).isFalse();
    }
}
