package org.tallywright.catalog;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.io.ClassPathResource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;

/** What the desk saves is read back with plain SQL. */
@AppTest
class TaskKindDeskSqlTest {
    @Autowired
    CatalogSeed seed;

    @Autowired
    TaskKindDesk desk;

    @Autowired
    TaskKinds taskKinds;

    @Autowired
    Stages stages;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    SamplePeople people;

    UUID ada;

    @BeforeEach
    void fill() {
        ada = people.owner().personId();
        seed.load();
    }

    @Test
    void writesEveryColumn() {
        UUID id = Ids.next();
        desk.save(corbel(id, null, List.of(new KindWait("glue sets", 60, "the can"))), ada);
        assertThat(jdbc.sql("""
                        select code || '|' || name || '|' || unit || '|' || unit_hours || '|' || low_unit_hours || '|'
                            || coalesce(high_unit_hours::text, '-') || '|' || place || '|' || hour_class || '|' || drivers
                            || '|' || basis || '|' || caution || '|' || caution_source || '|' || active || '|' || version
                        from task_kind where id = ?""").param(id).query(String.class).single())
                .isEqualTo(
                        "shape_a_corbel|Shape a corbel|each|1.50000|0.50000|-|site|clean-up|old plaster|told|Mind it.|common caution|true|0");
        assertThat(jdbc.sql(
                                "select position || '|' || what || '|' || minutes || '|' || basis from task_kind_wait where task_kind_id = ?")
                        .param(id)
                        .query(String.class)
                        .list())
                .containsExactly("1|glue sets|60|the can");
    }

    @Test
    void countsAChangedWaitAsAChangeOfTheTaskKind() {
        UUID id = Ids.next();
        desk.save(corbel(id, null, List.of(new KindWait("glue sets", 60, "the can"))), ada);
        desk.save(
                corbel(
                        id,
                        0,
                        List.of(new KindWait("glue sets", 90, "the can"), new KindWait("cures", 1440, "the can"))),
                ada);
        TaskKindCard card = taskKinds.card(id);
        assertThat(card.version()).isEqualTo(1);
        assertThat(card.waits()).extracting(KindWait::minutes).containsExactly(90, 1440);
        desk.save(corbel(id, 1, List.of()), ada);
        assertThat(taskKinds.card(id).waits()).isEmpty();
        assertThat(taskKinds.card(id).version()).isEqualTo(2);
    }

    /** The trigger from now on, the migration for the time before: both from the same change. */
    @Test
    void keepsTheStartingRateThatWasAndFindsItInTheTrail() throws Exception {
        UUID id = Ids.next();
        desk.save(corbel(id, null, List.of()), ada);
        desk.save(corbel(id, 0, List.of(new KindWait("glue sets", 60, "the can"))), ada);
        assertThat(ratesBefore()).as("the rate is the same").isEmpty();
        desk.save(corbel(id, 1, List.of(), "2"), ada);
        assertThat(ratesBefore()).containsExactly(id + " each 1.50000 2026-11-25");
        String migration = new ClassPathResource("db/migration/V186__catalog_starting_rates_before.sql")
                .getContentAsString(StandardCharsets.UTF_8);
        jdbc.sql("delete from starting_rate_before").update();
        jdbc.sql(migration.substring(migration.indexOf(
                        "insert into starting_rate_before (task_kind_id, unit, unit_hours, until_at)\nselect")))
                .update();
        assertThat(ratesBefore()).containsExactly(id + " each 1.50000 2026-11-25");
    }

    private List<String> ratesBefore() {
        return jdbc.sql(
                        "select task_kind_id || ' ' || unit || ' ' || unit_hours || ' ' || until_at::date from starting_rate_before")
                .query(String.class)
                .list();
    }

    private SaveTaskKind corbel(UUID id, Integer version, List<KindWait> waits) {
        return corbel(id, version, waits, "1.5");
    }

    private SaveTaskKind corbel(UUID id, Integer version, List<KindWait> waits, String rate) {
        return new SaveTaskKind(
                id,
                version,
                "Shape a corbel",
                stages.named("Build").orElseThrow().id(),
                Unit.EACH,
                UnitHours.of(rate),
                UnitHours.of("0.5"),
                null,
                Place.SITE,
                HourClass.CLEAN_UP,
                "old plaster",
                "told",
                "Mind it.",
                "common caution",
                waits,
                Set.of(taskKinds.coded("rough_mill").orElseThrow().id()));
    }
}
