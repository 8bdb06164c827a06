package org.tallywright.past;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.costing.SampleCosts;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Money;
import org.tallywright.shared.Quantity;
import org.tallywright.web.SignedIn;

/** A seat and a bench of one job that share its oak, 601.00 in all: 20 bf were estimated for the seat, 10 bf for the bench. */
@AppTest
class PastFiguresSqlTest {
    @Autowired
    SamplePast sample;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SampleEstimates estimates;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleCosts costs;

    @Autowired
    PastJobs past;

    @Autowired
    BuiltPieces pieces;

    @Autowired
    JdbcClient jdbc;

    SamplePast.Built built;
    SignedIn owner;
    UUID bench;
    UUID oak;

    @BeforeEach
    void buildTwo() {
        built = sample.running();
        owner = built.seat().owner();
        oak = built.seat().oak();
        sample.price(oak, "10.00");
        bench = jobs.piece(built.seat().job(), "Bench", "48", "18", "15", owner);
        estimates.material(built.seat().job(), built.piece(), oak, "20", owner);
        estimates.material(built.seat().job(), bench, oak, "10", owner);
        // Screws from stock that no line names, so that what a piece took would not be known.
        people.asShop(() ->
                jdbc.sql("delete from material_use where source = 'stock'").update());
    }

    private Map<UUID, Money> costs() {
        return pieces.material(pieces.find(new BuiltSearch(null, "", null, null, null, true, null)));
    }

    private List<PastMaterial> oakOf(UUID piece) {
        return past.job(built.seat().job().number(), true).materials().stream()
                .filter(m -> piece.equals(m.pieceId()) && m.materialId().equals(oak))
                .toList();
    }

    @Test
    void sharesAMaterialByWhatWasEstimatedForEach() {
        assertThat(costs()).containsEntry(built.piece(), Money.of("400.67")).containsEntry(bench, Money.of("200.33"));
        assertThat(oakOf(built.piece())).extracting(PastMaterial::there).containsExactly(Quantity.of(22));
        assertThat(oakOf(bench)).extracting(PastMaterial::there).containsExactly(Quantity.of(11));
    }

    /** 30 bf more for the bench and the removal of the old one, in a change order that came to nothing. */
    @ParameterizedTest
    @ValueSource(strings = {"issued", "withdrawn", "declined"})
    void leavesOutWhatWasOnlyInAChangeOrderThatWasNotAccepted(String state) {
        UUID more = estimates.material(built.seat().job(), bench, oak, "30", owner);
        UUID removal = estimates.other(built.seat().job(), "Removal", "90.00", owner);
        sample.changeOrder(built.seat(), 1, state, more, removal);

        assertThat(costs()).containsEntry(built.piece(), Money.of("400.67")).containsEntry(bench, Money.of("200.33"));
        assertThat(oakOf(bench)).extracting(PastMaterial::there).containsExactly(Quantity.of(11));
        assertThat(past.job(built.seat().job().number(), true).costs()).isEmpty();
    }

    /** Offered in vain at first, then accepted: 20 bf of the seat beside 40 bf of the bench. */
    @Test
    void countsWhatALaterChangeOrderBrought() {
        UUID more = estimates.material(built.seat().job(), bench, oak, "30", owner);
        UUID removal = estimates.other(built.seat().job(), "Removal", "90.00", owner);
        sample.changeOrder(built.seat(), 1, "withdrawn", more, removal);
        sample.changeOrder(built.seat(), 2, "accepted", more, removal);

        assertThat(costs()).containsEntry(built.piece(), Money.of("200.33")).containsEntry(bench, Money.of("400.67"));
        assertThat(oakOf(bench)).hasSize(2);
        assertThat(past.job(built.seat().job().number(), true).costs())
                .extracting(PastCost::description)
                .containsExactly("Removal");
    }

    /** 30 bf more for the bench in an option that nobody chose. */
    @Test
    void leavesOutTheOptionThatNobodyTook() {
        UUID more = estimates.material(built.seat().job(), bench, oak, "30", owner);
        people.asShop(() -> {
            jdbc.sql("insert into estimate_option (id, job_id, name, position, version) values (?, ?, 'Deeper', 1, 0)")
                    .params(more, built.seat().job().id())
                    .update();
            jdbc.sql(
                            "insert into estimate_option_line (option_id, job_id, estimate_material_id) values (:id, :job, :id)")
                    .param("id", more)
                    .param("job", built.seat().job().id())
                    .update();
        });

        assertThat(costs()).containsEntry(built.piece(), Money.of("400.67")).containsEntry(bench, Money.of("200.33"));
        assertThat(oakOf(bench)).hasSize(1);
    }

    @Test
    void knowsNoMaterialOfAPieceWhereSomeOfTheJobWasGivenToNone() {
        estimates.material(built.seat().job(), null, oak, "5", owner);
        assertThat(costs()).isEmpty();
    }

    @Test
    void knowsNoMaterialOfAPieceWhereSomeWasBoughtThatNoLineNames() {
        UUID glue = costs.material("glue", "Glue", "adhesive", "each");
        people.asShop(
                () -> jdbc.sql("""
                        insert into material_use (id, job_id, material_id, quantity, source, unit_price, used_on, version)
                        values (?, ?, ?, 1, 'stock', 8.50, date '2026-11-12', 0)""").params(glue, built.seat().job().id(), glue).update());
        assertThat(costs()).isEmpty();

        // Once a line gives it to the bench it is the bench's.
        sample.price(glue, "8.50");
        estimates.material(built.seat().job(), bench, glue, "1", owner);
        assertThat(costs()).containsEntry(built.piece(), Money.of("400.67")).containsEntry(bench, Money.of("208.83"));
    }

    @Test
    void givesAllMaterialOfAJobToItsOnlyPiece() {
        people.asShop(() -> {
            jdbc.sql("delete from estimate_material where piece_id = ?")
                    .param(bench)
                    .update();
            jdbc.sql("delete from piece where id = ?").param(bench).update();
        });
        estimates.material(built.seat().job(), null, oak, "5", owner);
        assertThat(costs()).containsExactly(Map.entry(built.piece(), Money.of("601.00")));
    }
}
