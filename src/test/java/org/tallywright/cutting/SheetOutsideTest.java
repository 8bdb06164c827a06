package org.tallywright.cutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Known values of cutting one sheet and of the fewest sheets: Christofides and Whitlock 1977, Beasley 1985, Berkey and
 * Wang 1987; sources row by row in optima_2d.csv.
 */
class SheetOutsideTest {
    static Stream<CSVRecord> guillotine() {
        return PackingChecks.rows("optima_2d.csv").stream()
                .filter(row -> row.get("problem").contains("; guillotine"));
    }

    @ParameterizedTest
    @MethodSource("guillotine")
    void reachesTheGuillotineValueOfOneSheet(CSVRecord optimum) {
        boolean unlimited = optimum.get("problem").contains("unlimited copies");

        OneSheet.Best best = best(optimum.get("instance"), unlimited, false);

        assertThat(best.exact()).isTrue();
        assertThat(best.value()).isEqualTo(PackingChecks.number(optimum, "optimum"));
    }

    /** The optimum of any layout, guillotine or not, is reached here, so it is that of guillotine layouts too. */
    @ParameterizedTest
    @CsvSource({"cgcut1,false,244", "cgcut2,false,2892", "cgcut3,false,1860", "cgcut1,true,260"})
    void reachesTheOptimumOfAnyLayout(String instance, boolean turnable, double value) {
        OneSheet.Best best = best(instance, false, turnable);

        assertThat(best.exact()).isTrue();
        assertThat(best.value()).isEqualTo(value);
    }

    /**
     * The optimum of any layout with turning is not reached; what is cut without turning is a layout with turning too, so ours
     * is never less than that.
     */
    @ParameterizedTest
    @CsvSource({"cgcut1,260", "cgcut2,2909", "cgcut3,1940", "gcut1,58136", "gcut2,60656"})
    void turningIsNeverWorseThanNotTurning(String instance, double known) {
        OneSheet.Best turned = best(instance, false, true);

        assertThat(turned.value()).isBetween(best(instance, false, false).value(), known);
    }

    /** The values of ngcut lie beside no source; the file holds areas, so that ours is held against the sheet's. */
    @ParameterizedTest
    @CsvSource({"ngcut1", "ngcut2", "ngcut3"})
    void fillsNoMoreThanTheSheet(String instance) {
        OneSheet.Best best = best(instance, false, false);

        assertThat(best.exact()).isTrue();
        assertThat(best.value()).isBetween(90.0, 100.0);
        assertThat(area(best.built())).isEqualTo(best.value());
    }

    private static double area(OneSheet.@Nullable Built built) {
        if (built == null) {
            return 0;
        }
        return built.part() >= 0 ? built.length() * built.width() : area(built.first()) + area(built.second());
    }

    private static OneSheet.Best best(String instance, boolean unlimited, boolean turnable) {
        List<CSVRecord> rows = PackingChecks.instances("instances_2d.csv").get(instance);
        List<ValuedPart> parts = rows.stream()
                .map(row -> new ValuedPart(
                        PackingChecks.number(row, "piece_width"),
                        PackingChecks.number(row, "piece_height"),
                        unlimited ? BarStock.ANY : (int) PackingChecks.number(row, "copies"),
                        PackingChecks.number(row, "value"),
                        turnable))
                .toList();
        CSVRecord sheet = rows.get(0);
        return OneSheet.best(
                PackingChecks.number(sheet, "sheet_width"), PackingChecks.number(sheet, "sheet_height"), parts, 20_000);
    }

    static Stream<CSVRecord> fewestSheets() {
        return PackingChecks.rows("optima_2d.csv").stream()
                .filter(row -> row.get("problem").startsWith("fewest sheets"));
    }

    /** The optimum is of any layout; ours is guillotine, and may take one more. */
    @ParameterizedTest
    @MethodSource("fewestSheets")
    void takesAtMostOneSheetMoreThanTheOptimum(CSVRecord optimum) {
        List<CSVRecord> rows = PackingChecks.instances("instances_2d.csv").get(optimum.get("instance"));
        List<SheetPart> parts = new ArrayList<>();
        for (CSVRecord row : rows) {
            for (int n = 0; n < PackingChecks.number(row, "copies"); n++) {
                parts.add(new SheetPart(
                        PackingChecks.number(row, "piece_width"),
                        PackingChecks.number(row, "piece_height"),
                        Grain.ALONG,
                        0));
            }
        }
        SheetStock sheet = new SheetStock(
                PackingChecks.number(rows.get(0), "sheet_width"), PackingChecks.number(rows.get(0), "sheet_height"));

        SheetPlan plan = SheetPlanner.plan(sheet, List.of(), parts, 0, 0);

        assertThat(plan.unplaced()).isEmpty();
        long known = PackingChecks.number(optimum, "optimum");
        assertThat((long) plan.bought()).isBetween(known, known + 1);
    }
}
