package org.tallywright.cutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Known optima of cutting stock: classic examples and the sets of Falkenauer 1996, Scholl, Klein and Juergens 1997, Waescher
 * and Gau 1996; sources row by row in optima_1d.csv.
 */
class BarOutsideTest {
    static Stream<CSVRecord> optima() {
        return PackingChecks.rows("optima_1d.csv").stream();
    }

    @ParameterizedTest
    @MethodSource("optima")
    void buysNoMoreThanTheKnownOptimum(CSVRecord optimum) {
        List<CSVRecord> rows = PackingChecks.instances("instances_1d.csv").get(optimum.get("instance"));
        List<BarPart> parts = rows.stream()
                .map(row -> new BarPart(PackingChecks.number(row, "length"), (int) PackingChecks.number(row, "demand")))
                .toList();
        long capacity = PackingChecks.number(optimum, "capacity");

        BarPlan plan = BarPlanner.plan(List.of(BarStock.bought(capacity)), parts, 0, 0);

        assertThat(plan.unplaced()).isEmpty();
        assertThat(plan.bars()).hasSize((int) PackingChecks.number(optimum, "optimal_stock_pieces"));
        assertThat(plan.bound()).isLessThanOrEqualTo(plan.bars().size() * capacity);
    }
}
