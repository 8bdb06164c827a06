package org.tallywright.catalog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;

/** The desk refuses what makes no sense, and so does the database where somebody goes past the desk. */
@AppTest
class TaskKindMergingSqlTest {
    @Autowired
    CatalogSeed seed;

    @Autowired
    TaskKindMerging merging;

    @Autowired
    TaskKindDesk desk;

    @Autowired
    TaskKinds kinds;

    @Autowired
    PieceKinds pieceKinds;

    @Autowired
    PieceKindDesk pieceKindDesk;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    SamplePeople people;

    UUID ada;
    UUID rip;
    UUID crosscut;
    UUID edge;

    @BeforeEach
    void fill() {
        ada = people.owner().personId();
        seed.load();
        List<TaskKindCard> feet = kinds.active().stream()
                .filter(kind -> kind.unit().code().equals("lf"))
                .toList();
        rip = feet.get(0).id();
        crosscut = feet.get(1).id();
        edge = feet.get(2).id();
    }

    private void merge(UUID id, UUID into) {
        merging.merge(id, kinds.card(id).version(), into, ada);
    }

    private void refuses(UUID id, UUID into, String sentence) {
        assertThatThrownBy(() -> merge(id, into)).isInstanceOf(Refused.class).hasMessageContaining(sentence);
    }

    @Test
    void countsOneKindAsAnotherAndTakesItApart() {
        int inUse = kinds.active().size();
        merge(rip, crosscut);
        assertThat(kinds.active())
                .hasSize(inUse - 1)
                .extracting(TaskKindCard::id)
                .doesNotContain(rip);
        assertThat(kinds.countedAs(List.of(rip, edge)))
                .containsEntry(rip, kinds.card(crosscut))
                .containsEntry(edge, kinds.card(edge));
        assertThat(kinds.mergedInto(crosscut)).extracting(TaskKindCard::id).containsExactly(rip);
        merging.part(rip, ada);
        merging.part(rip, ada);
        assertThat(kinds.card(rip).merge()).isNull();
        assertThat(kinds.active()).hasSize(inUse);
    }

    @Test
    void saidTwiceItIsARepeatAndAnOldPageIsStale() {
        int version = kinds.card(rip).version();
        merging.merge(rip, version, crosscut, ada);
        merging.merge(rip, version, crosscut, ada);
        merging.part(rip, ada);
        assertThatThrownBy(() -> merging.merge(rip, version, crosscut, ada)).isInstanceOf(Stale.class);
    }

    @Test
    void refusesItselfOtherUnitsChainsAndWhatIsOutOfUse() {
        UUID each = kinds.active().stream()
                .filter(kind -> kind.unit().code().equals("each"))
                .findFirst()
                .orElseThrow()
                .id();
        refuses(rip, rip, "as itself");
        refuses(rip, each, "cannot be counted together");
        refuses(rip, Ids.next(), "Choose from the list");
        merge(rip, crosscut);
        refuses(edge, rip, "is itself counted as another kind");
        refuses(crosscut, edge, "Other kinds are counted as");
        refuses(rip, edge, "Take it apart first");
        merging.part(rip, ada);
        desk.use(crosscut, false, ada);
        refuses(rip, crosscut, "out of use");
    }

    @Test
    void aMergedKindIsNotEditedNorBroughtBackByTheOtherButton() {
        merge(rip, crosscut);
        assertThatThrownBy(() -> desk.use(rip, true, ada)).isInstanceOf(Refused.class);
        SaveTaskKind same = content(rip, "Rip it");
        assertThatThrownBy(() -> desk.save(same, ada)).hasMessageContaining("Take it apart first");
    }

    private SaveTaskKind content(UUID id, String name) {
        TaskKindCard card = kinds.card(id);
        return new SaveTaskKind(
                id,
                card.version(),
                name,
                card.stageId(),
                card.unit(),
                card.unitHours(),
                card.low(),
                card.high(),
                card.place(),
                card.hourClass(),
                card.drivers(),
                card.basis(),
                card.caution(),
                card.cautionSource(),
                card.waits(),
                java.util.Set.copyOf(card.before()));
    }

    @Test
    void theDatabaseRefusesTheSame() {
        merge(rip, crosscut);
        String into =
                "update task_kind set active = false, merged_into = ?, merged_at = timestamptz '2026-03-02', merged_by = ? where id = ?";
        refusesSql("task_kind_merged_not_itself", into, edge, ada, edge);
        refusesSql("task_kind_merged_into_fk", into, rip, ada, edge);
        refusesSql("task_kind_merged_into_fk", into, edge, ada, crosscut);
        refusesSql("task_kind_merged_into_fk", "update task_kind set unit = 'sf' where id = ?", crosscut);
        refusesSql("task_kind_merged_into_fk", "update task_kind set unit = 'sf' where id = ?", rip);
        refusesSql("task_kind_merged_out_of_use", "update task_kind set active = true where id = ?", rip);
        refusesSql("task_kind_merge_is_whole", "update task_kind set merged_by = null where id = ?", rip);
    }

    private void refusesSql(String constraint, String sql, Object... values) {
        assertThatThrownBy(
                        () -> people.asShop(() -> jdbc.sql(sql).params(values).update()))
                .isInstanceOf(DataIntegrityViolationException.class)
                .hasMessageContaining(constraint);
    }

    /** A kind of piece that proposes three of each of these, and nothing else. */
    private UUID proposing(Map<UUID, Measure> lines) {
        PieceKindCard shelf = pieceKinds.active().get(0);
        UUID id = shelf.id();
        shelf.lines()
                .forEach(line -> pieceKindDesk.remove(id, pieceKinds.card(id).version(), line.taskKindId()));
        lines.forEach((kind, measure) -> pieceKindDesk.put(
                id, pieceKinds.card(id).version(), new PieceKindLine(kind, measure, new BigDecimal("3"), false)));
        merge(rip, crosscut);
        return id;
    }

    @Test
    void onceForTheJobAndOnceForThePieceStayTwoProposals() {
        UUID id = proposing(Map.of(rip, Measure.JOB, crosscut, Measure.EACH));
        assertThat(pieceKinds.propose(id, null, null, null, 2))
                .extracting(p -> p.taskKindId() + " " + p.quantity() + " " + p.wholeJob())
                .containsExactlyInAnyOrder(crosscut + " 3 true", crosscut + " 6 false");
    }

    @Test
    void aCountOfOneMergedKindLeavesTheOtherItsRule() {
        UUID id = proposing(Map.of(rip, Measure.EACH, crosscut, Measure.EACH));
        for (UUID counted : List.of(rip, crosscut)) {
            assertThat(pieceKinds.propose(id, null, null, null, 1, Map.of(counted, Quantity.of(10))))
                    .extracting(p -> p.taskKindId() + " " + p.quantity() + " " + p.basis())
                    .containsExactly(crosscut + " 13 BOTH");
        }
        assertThat(pieceKinds.propose(
                        id,
                        null,
                        null,
                        null,
                        1,
                        Map.of(rip, Quantity.of(10), crosscut, Quantity.of(5), edge, Quantity.of(7))))
                .extracting(p -> p.taskKindId() + " " + p.quantity() + " " + p.basis())
                .containsExactly(crosscut + " 15 PARTS", edge + " 7 PARTS");
        assertThat(pieceKinds.propose(id, null, null, null, 1, Map.of(rip, Quantity.of(0))))
                .extracting(p -> p.quantity() + " " + p.basis())
                .containsExactly("3 RULE");
        assertThat(pieceKinds.propose(id, null, null, null, 1, Map.of(rip, Quantity.of(0), crosscut, Quantity.of(0))))
                .isEmpty();
        assertThat(pieceKinds.propose(null, null, null, null, 1, Map.of(rip, Quantity.of(4))))
                .extracting(p -> p.taskKindId() + " " + p.quantity())
                .containsExactly(crosscut + " 4");
    }

    @Test
    void aKindOfPieceProposesTheOtherOnce() {
        UUID id = proposing(Map.of(rip, Measure.JOB, crosscut, Measure.JOB));
        List<Proposal> proposals = pieceKinds.propose(id, null, null, null, 1);
        assertThat(proposals).extracting(Proposal::taskKindId).containsExactly(crosscut);
        assertThat(proposals.get(0).quantity().amount()).isEqualByComparingTo("6");
    }
}
