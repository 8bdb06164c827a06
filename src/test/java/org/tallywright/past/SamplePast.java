package org.tallywright.past;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.costing.SampleCosts;
import org.tallywright.costing.SampleCosts.Seat;
import org.tallywright.jobs.Closing;
import org.tallywright.jobs.JobDesk;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;

/**
 * The window seat of {@link SampleCosts}, closed, of a kind: ripping grows with the face, panels with the width. Really done: 120 lf
 * ripped in 2 h (estimated 100 lf in 1 h 30), 3 panels in 2 h 30 and half an hour of rework (estimated 3 h); 33 bf of 50 bf oak.
 */
@Component
public class SamplePast {
    private final SampleCosts costs;
    private final JobDesk desk;
    private final SamplePeople people;
    private final JdbcClient jdbc;

    SamplePast(SampleCosts costs, JobDesk desk, SamplePeople people, JdbcClient jdbc) {
        this.costs = costs;
        this.desk = desk;
        this.people = people;
        this.jdbc = jdbc;
    }

    /** @param piece the only one of the job */
    public record Built(Seat seat, UUID piece, UUID kind) {}

    public Built running() {
        Seat seat = costs.worked();
        UUID piece = jdbc.sql("select id from piece where job_id = ?")
                .param(seat.job().id())
                .query(UUID.class)
                .single();
        UUID kind = Ids.next();
        people.asShop(() -> {
            jdbc.sql("insert into piece_kind (id, name, version) values (?, 'Window seat', 0)")
                    .param(kind)
                    .update();
            grows(kind, seat.rip(), 1, "face", "13", false);
            grows(kind, seat.glue(), 2, "width", "0.5", true);
            jdbc.sql("update piece set piece_kind_id = ? where id = ?")
                    .params(kind, piece)
                    .update();
        });
        return new Built(seat, piece, kind);
    }

    private void grows(UUID kind, UUID task, int position, String measure, String factor, boolean roundUp) {
        jdbc.sql("""
                        insert into piece_kind_task (id, piece_kind_id, task_kind_id, position, measure, factor, round_up)
                        select ?, ?, task_kind_id, ?, ?, ?, ? from task where id = ?""")
                .params(Ids.next(), kind, position, measure, new BigDecimal(factor), roundUp, task)
                .update();
    }

    public Built closed() {
        Built built = running();
        Map<UUID, Closing.TaskAnswer> travel = Map.of(built.seat().travel(), Closing.TaskAnswer.DONE);
        desk.close(
                built.seat().job().id(),
                new Closing(travel, false, true),
                built.seat().owner().personId());
        return built;
    }

    /** A price of today in the catalogue. */
    public void price(UUID material, String price) {
        people.asShop(() -> jdbc.sql(
                        "insert into material_price (material_id, from_date, unit_price) values (?, date '2026-11-01', ?)")
                .params(material, new BigDecimal(price))
                .update());
    }

    /** A change order of the job that holds a material line and another cost. */
    public void changeOrder(Seat seat, int n, String state, UUID material, UUID other) {
        UUID id = Ids.next();
        costs.inTrail(seat.owner(), () -> {
            jdbc.sql("""
                            insert into bid select (jsonb_populate_record(null::bid, to_jsonb(b) || jsonb_build_object('id', :id::text,
                                'kind', 'change order', 'mark', 'CO-' || :n, 'number', b.number || ' CO-' || :n, 'state', :state,
                                'accepted_at', case when :state = 'accepted' then b.accepted_at end)
                                )).* from bid b where b.id = :bid""")
                    .param("id", id)
                    .param("n", n)
                    .param("state", state)
                    .param("bid", seat.bid())
                    .update();
            jdbc.sql("""
                            insert into bid_material (bid_id, position, material_id, name, unit, net_quantity, yield, purchase_quantity,
                                unit_price, freight_amount, amount, estimate_material_id)
                            select ?, 1, m.id, m.name, m.unit, l.net_quantity, l.yield, l.purchase_quantity, l.unit_price,
                                l.freight_amount, l.amount, l.id
                            from estimate_material l join material m on m.id = l.material_id where l.id = ?""").params(id, material).update();
            jdbc.sql("""
                            insert into bid_other (bid_id, position, description, amount, estimate_other_id)
                            select ?, 1, description, amount, id from estimate_other where id = ?""").params(id, other).update();
            return id;
        });
    }

    /** Everything that is ticked, each task at those hours. */
    public CopyPlan plan(CopyOffer offer, HoursChoice.Basis basis) {
        CopyOffer.Group group = offer.groups().get(0);
        PastPiece piece = group.piece();
        return new CopyPlan(
                Ids.next(),
                offer.from(),
                piece == null ? null : piece.id(),
                offer.what(piece),
                piece == null
                        ? List.of()
                        : List.of(new CopyPlan.PieceLine(
                                piece.id(), null, group.now(), true, group.sameSizes(), "As there")),
                group.tasks().stream()
                        .map(t -> new CopyPlan.TaskLine(
                                t.past().id(),
                                piece == null ? null : piece.id(),
                                t.kindId(),
                                t.past().name(),
                                t.quantity(),
                                t.choice(basis.code()).map(HoursChoice::rate).orElse(null),
                                t.origin(offer.what(piece))))
                        .toList(),
                group.materials().stream()
                        .filter(CopyOffer.MaterialLine::ticked)
                        .map(m -> new CopyPlan.MaterialLine(
                                m.past().id(),
                                piece == null ? null : piece.id(),
                                m.past().materialId(),
                                m.net(),
                                null,
                                "As there"))
                        .toList(),
                List.of());
    }
}
