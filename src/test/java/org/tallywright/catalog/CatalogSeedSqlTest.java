package org.tallywright.catalog;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.AppTest;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Length;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Units;
import org.tallywright.trail.Trail;

@AppTest
class CatalogSeedSqlTest {
    @Autowired
    CatalogSeed seed;

    @Autowired
    Stages stages;

    @Autowired
    TaskKinds taskKinds;

    @Autowired
    PieceKinds pieceKinds;

    @Autowired
    Materials materials;

    @Autowired
    ShopClock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    SamplePeople people;

    @Autowired
    Trail trail;

    @Autowired
    TransactionTemplate transaction;

    @Test
    void fillsAnEmptyCatalogueOnce() {
        assertThat(seed.load()).isTrue();
        assertThat(seed.load()).isFalse();
        assertThat(stages.active())
                .extracting(StageCard::name)
                .containsExactly("Measure", "Bid", "Buy", "Mill", "Build", "Fit", "Finish", "Install", "Close");
        assertThat(taskKinds.active()).hasSize(53);
        assertThat(pieceKinds.active()).hasSize(21);
        assertThat(materials.active()).hasSize(43);
        assertThat(jdbc.sql("select count(*) from task_kind_before")
                        .query(Integer.class)
                        .single())
                .isEqualTo(60);
    }

    @Test
    void keepsRateRangeWaitsOrderAndCautionOfATaskKind() {
        seed.load();
        TaskKindCard glueUp = taskKinds.coded("panel_glue").orElseThrow();
        assertThat(glueUp.stageName()).isEqualTo("Build");
        assertThat(glueUp.unit()).isEqualTo(Unit.SF);
        assertThat(glueUp.unitHours()).isEqualTo(UnitHours.of("0.11"));
        assertThat(glueUp.low()).isEqualTo(UnitHours.of("0.06"));
        assertThat(glueUp.high()).isEqualTo(UnitHours.of("0.2"));
        assertThat(glueUp.waits()).extracting(KindWait::minutes).containsExactly(240, 1440);
        assertThat(glueUp.before())
                .containsExactly(
                        taskKinds.coded("plane_thickness").orElseThrow().id());
        assertThat(glueUp.caution()).contains("below 50 F");
        assertThat(glueUp.cautionSource()).contains("PVA glues");
        assertThat(taskKinds.coded("supply_run").orElseThrow().hourClass()).isEqualTo(HourClass.SUPPLY_RUN);
        assertThat(taskKinds.find(glueUp.id())).contains(glueUp);
    }

    @Test
    void datesPricesFromTheDayOfLoading() {
        seed.load();
        MaterialCard oak = materials.coded("red_oak_54").orElseThrow();
        assertThat(materials.priceOn(oak.id(), clock.today())).hasValue(UnitPrice.of("9.20"));
        assertThat(materials.priceOn(oak.id(), clock.today().minusDays(1))).isEmpty();
        assertThat(materials.pricesOn(clock.today())).hasSize(43).containsEntry(oak.id(), UnitPrice.of("9.20"));
    }

    /** The demo's left alcove bookcase, whose own estimate had 4 sheets, 70 lf of dadoes, 16 joints, 24 lf of scribing. */
    @Test
    void proposesForABookcaseAboutWhatACarpenterPutDown() {
        seed.load();
        PieceKindCard bookcase = pieceKinds.named("bookcase").orElseThrow();
        Map<String, Quantity> proposed = byCode(bookcase, "47 5/16", "95 1/4", "14 3/8", 1);
        // Face 31.2952 sf, edge 23.7604 ft.
        assertThat(proposed)
                .containsEntry("sheet_cut", Quantity.of(5))
                .containsEntry("dado_groove", Quantity.of("70.4"))
                .containsEntry("frame_joint", Quantity.of(18))
                .containsEntry("case_assemble", Quantity.of(3))
                .containsEntry("scribe", Quantity.of("23.8"))
                .containsEntry("finish_prep", Quantity.of("179.9"))
                .containsEntry("rough_mill", Quantity.of("46.9"))
                .containsEntry("travel", Quantity.of(6));
    }

    @Test
    void speaksMetresInAMetricShop() {
        people.owner();
        transaction.executeWithoutResult(status -> {
            trail.byShop();
            jdbc.sql("update shop set units = 'metric'").update();
        });
        seed.load();
        TaskKindCard rip = taskKinds.coded("rip_hardwood").orElseThrow();
        // 0.014 h/lf / 0.3048 = 0.04593 h/m; $9.20/bf / 0.002359737216 = $3,898.7392/m3.
        assertThat(rip.unit()).isEqualTo(Unit.LM);
        assertThat(rip.unitHours()).isEqualTo(UnitHours.of("0.04593"));
        MaterialCard oak = materials.coded("red_oak_54").orElseThrow();
        assertThat(oak.unit()).isEqualTo("m3");
        assertThat(materials.priceOn(oak.id(), clock.today())).hasValue(UnitPrice.of("3898.7392"));
        // 70.4143 lf of dadoes = 21.46 m; 179.9477 sf of prep = 16.72 m2.
        assertThat(byCode(pieceKinds.named("bookcase").orElseThrow(), "47 5/16", "95 1/4", "14 3/8", 1))
                .containsEntry("dado_groove", Quantity.of("21.46"))
                .containsEntry("finish_prep", Quantity.of("16.72"))
                .containsEntry("sheet_cut", Quantity.of(5));
    }

    @Test
    void proposesJobTasksOnceHoweverManyPiecesAreAlike() {
        seed.load();
        PieceKindCard tread = pieceKinds.named("Stair tread").orElseThrow();
        Map<String, Quantity> proposed = byCode(tread, "38 1/4", "1 1/16", "11 1/4", 14);
        assertThat(proposed)
                .containsEntry("set_tread", Quantity.of(14))
                .containsEntry("shop_drawing", Quantity.of(1))
                .containsEntry("travel", Quantity.of(6));
        assertThat(pieceKinds.propose(tread.id(), 1L, 1L, 1L, 14))
                .filteredOn(Proposal::wholeJob)
                .hasSize(11);
    }

    @Test
    void standsInTheOrderOfTheWork() {
        seed.load();
        assertThat(pieceKinds.active()).allSatisfy(kind -> {
            var places = kind.lines().stream()
                    .map(line -> taskKinds.card(line.taskKindId()).stageId())
                    .map(id -> stages.find(id).orElseThrow().position())
                    .toList();
            assertThat(places).isSorted();
        });
    }

    private Map<String, Quantity> byCode(PieceKindCard kind, String width, String height, String depth, int count) {
        Function<String, Long> units =
                typed -> Length.parse(typed, Units.IMPERIAL).units();
        return pieceKinds
                .propose(kind.id(), units.apply(width), units.apply(height), units.apply(depth), count)
                .stream()
                .collect(Collectors.toMap(p -> taskKinds.card(p.taskKindId()).code(), Proposal::quantity));
    }
}
