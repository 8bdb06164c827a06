package org.tallywright.materials;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.tallywright.AppTest;
import org.tallywright.costing.SampleCosts;
import org.tallywright.costing.SampleCosts.Seat;

/** What a job consumed of each material, by hand: see {@link SampleCosts}. */
@AppTest
class JobMaterialsSqlTest {
    @Autowired
    SampleCosts sample;

    @Autowired
    JobMaterials materials;

    @Autowired
    MaterialLedger ledger;

    @Test
    void chargesWhatWasBoughtLessWhatWentBackOrStayed() {
        Seat seat = sample.worked();
        JobMaterials.Row oak = materials.of(seat.job().id()).stream()
                .filter(row -> row.materialId().equals(seat.oak()))
                .findFirst()
                .orElseThrow();
        assertThat(oak.bought()).hasToString("56");
        assertThat(oak.sentBack()).hasToString("2");
        assertThat(oak.kept()).hasToString("4");
        assertThat(oak.charged()).hasToString("50");
        assertThat(oak.net()).hasToString("33");
        assertThat(oak.cost()).hasToString("601.00");
        assertThat(oak.yield()).hasValueSatisfying(yield -> assertThat(yield).hasToString("0.66"));
    }

    @Test
    void chargesStockAtItsPriceWhenItWasTaken() {
        List<JobMaterials.Row> rows = materials.of(sample.worked().job().id());
        assertThat(rows)
                .filteredOn(row -> row.name().equals("Screws"))
                .singleElement()
                .satisfies(row -> {
                    assertThat(row.fromStock()).hasToString("100");
                    assertThat(row.cost()).hasToString("5.00");
                    assertThat(row.yield()).isEmpty();
                });
    }

    @Test
    void yieldsOfAllJobsCountOnlyWhatIsKnown() {
        sample.worked();
        assertThat(ledger.yields()).singleElement().satisfies(row -> {
            assertThat(row.yield()).isEqualByComparingTo("0.66");
            assertThat(row.jobs()).isEqualTo(1);
        });
    }
}
