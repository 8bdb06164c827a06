package org.tallywright.past;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;

/** The catalogue has moved on since the window seat was built: 120 lf ripped, 33 bf of oak in it. */
@AppTest
class OutOfUseSqlTest {
    @Autowired
    SamplePast sample;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SamplePeople people;

    @Autowired
    PastJobs past;

    @Autowired
    CopyOffers offers;

    @Autowired
    JdbcClient jdbc;

    SamplePast.Built built;
    JobRef into;

    @BeforeEach
    void buildOne() {
        built = sample.closed();
        sample.price(built.seat().oak(), "12.50");
        into = jobs.lead(built.seat().owner(), "Seat for the library");
    }

    private CopyOffer.Group offered() {
        return offers.offer(into, past.piece(built.piece()), false, Map.of(), Map.of())
                .groups()
                .get(0);
    }

    private CopyOffer.TaskLine rip() {
        return offered().tasks().stream()
                .filter(t -> t.past().name().equals("Rip hardwood"))
                .findFirst()
                .orElseThrow();
    }

    private CopyOffer.MaterialLine oak() {
        UUID oak = built.seat().oak();
        return offered().materials().stream()
                .filter(m -> m.past().materialId().equals(oak))
                .findFirst()
                .orElseThrow();
    }

    private void change(String sql) {
        people.asShop(() -> jdbc.sql(sql).update());
    }

    @Test
    void doesNotTickAMaterialThatIsOutOfUse() {
        assertThat(oak().ticked()).isTrue();
        change("update material set active = false where code = 'red_oak'");
        assertThat(oak().ticked()).isFalse();
        assertThat(oak().notes()).contains("is out of use in the catalogue");
        assertThat(oak().net()).isEqualTo(Quantity.of(33));
    }

    @Test
    void doesNotTickAKindOfWorkThatIsOutOfUse() {
        assertThat(rip().ticked()).isTrue();
        change("update task_kind set active = false where code = 'rip_hardwood'");
        assertThat(rip().ticked()).isFalse();
        assertThat(rip().notes()).contains("its kind of work is out of use");
    }

    /** Feet of old say nothing of square feet, nor do the hours for one of them. */
    @Test
    void asksForTheQuantityWhereTheUnitMeasuresSomethingElseToday() {
        change("update task_kind set unit = 'sf' where code = 'rip_hardwood'");
        assertThat(rip().ticked()).isFalse();
        assertThat(rip().quantity()).isEqualTo(Quantity.ZERO);
        assertThat(rip().notes()).contains("counted in sf today: write the quantity anew");
        assertThat(rip().choices()).extracting(HoursChoice::basis).containsExactly(HoursChoice.Basis.BOOK);
    }

    /** 120 lf are 36.576 m exactly. */
    @Test
    void turnsFeetIntoMetresWhereTheShopHasTurnedMetric() {
        change("update task_kind set unit = 'lm' where code = 'rip_hardwood'");
        assertThat(rip().ticked()).isTrue();
        assertThat(rip().unit()).isEqualTo(Unit.LM);
        assertThat(rip().quantity()).isEqualTo(Quantity.of("36.576"));
        assertThat(rip().choices()).hasSize(3);
    }
}
