package org.tallywright.catalog;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toSet;
import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Unit;

/** The files of the starting catalogue agree with each other. */
class StartingCatalogTest {
    private final Set<String> codes = column("task_kinds", "code");

    @Test
    void keepsEachStartingRateInsideItsRange() {
        assertThat(SeedFile.rows("task_kinds")).allSatisfy(row -> {
            BigDecimal rate = new BigDecimal(row.get("unit_hours"));
            assertThat(new BigDecimal(row.get("low"))).isPositive().isLessThanOrEqualTo(rate);
            assertThat(new BigDecimal(row.get("high"))).isGreaterThanOrEqualTo(rate);
        });
    }

    @Test
    void usesOnlyWordsOfTheGlossary() {
        Set<String> stages = column("stages", "name");
        assertThat(SeedFile.rows("task_kinds")).allSatisfy(row -> {
            assertThat(Unit.of(row.get("unit")).code()).isEqualTo(row.get("unit"));
            assertThat(HourClass.of(row.get("hour_class")).code()).isEqualTo(row.get("hour_class"));
            assertThat(stages).contains(row.get("stage"));
        });
    }

    @Test
    void namesASourceForEveryCautionAndUsesEachCaution() {
        assertThat(SeedFile.rows("cautions"))
                .allSatisfy(row -> assertThat(row.get("source")).isNotBlank());
        Set<String> used = column("task_kinds", "caution");
        used.remove("");
        assertThat(used).isEqualTo(column("cautions", "key"));
    }

    @Test
    void leavesWorkOfLicensedTradesAndLocalRulesToThem() {
        Map<String, String> texts = new HashMap<>();
        SeedFile.rows("cautions").forEach(row -> texts.put(row.get("key"), row.get("text")));
        assertThat(texts.get("hidden_services")).contains("licensed trades").contains("local code");
        assertThat(texts.get("lead_paint")).contains("certified").contains("Local rules");
        assertThat(texts.get("stair_rules")).contains("local code");
    }

    @Test
    void namesOnlyKnownTaskKinds() {
        assertThat(codes).containsAll(column("waits", "task_kind"));
        assertThat(codes).containsAll(column("precedence", "task_kind"));
        assertThat(codes).containsAll(column("precedence", "before"));
        assertThat(codes).containsAll(column("piece_kinds", "task_kind"));
    }

    @Test
    void hasAtMostTheTouchAndTheFullCureInThatOrder() {
        SeedFile.rows("waits").stream()
                .collect(groupingBy(row -> row.get("task_kind")))
                .forEach((kind, waits) -> {
                    assertThat(waits).as(kind).hasSizeLessThanOrEqualTo(2);
                    assertThat(waits.stream().map(row -> Integer.valueOf(row.get("minutes"))))
                            .as(kind)
                            .isSorted();
                });
    }

    @Test
    void letsNoTaskKindComeBeforeItself() {
        Map<String, UUID> ids = new HashMap<>();
        codes.forEach(
                code -> ids.put(code, UUID.nameUUIDFromBytes(code.getBytes(java.nio.charset.StandardCharsets.UTF_8))));
        Map<UUID, Set<UUID>> before = new HashMap<>();
        SeedFile.rows("precedence")
                .forEach(row -> before.computeIfAbsent(ids.get(row.get("task_kind")), k -> new HashSet<>())
                        .add(ids.get(row.get("before"))));
        Precedence order = new Precedence(before);
        assertThat(codes)
                .allSatisfy(code -> assertThat(order.isBefore(ids.get(code), ids.get(code)))
                        .as(code)
                        .isFalse());
        assertThat(order.isBefore(ids.get("site_measure"), ids.get("hand_over")))
                .isTrue();
    }

    @Test
    void proposesEachTaskKindOnceForAKindOfPiece() {
        assertThat(SeedFile.rows("piece_kinds").stream()
                        .map(row -> row.get("piece_kind") + " " + row.get("task_kind"))
                        .toList())
                .doesNotHaveDuplicates();
        assertThat(SeedFile.rows("piece_kinds")).allSatisfy(row -> Measure.of(row.get("measure")));
    }

    @Test
    void buysMaterialByUnitsOfTheGlossary() {
        assertThat(SeedFile.rows("materials")).allSatisfy(row -> {
            assertThat(Unit.of(row.get("unit")).code()).isEqualTo(row.get("unit"));
            assertThat(new BigDecimal(row.get("starting_yield"))).isPositive().isLessThanOrEqualTo(BigDecimal.ONE);
            assertThat(new BigDecimal(row.get("purchase_step"))).isPositive();
        });
    }

    private static Set<String> column(String file, String column) {
        return SeedFile.rows(file).stream()
                .map((CSVRecord row) -> row.get(column))
                .collect(toSet());
    }
}
