package org.tallywright.db;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.AppTest;
import org.tallywright.people.SamplePeople;
import org.tallywright.trail.Trail;
import org.tallywright.web.Role;

/** What a rule of the database refuses is people's names and money: neither the log nor the exception repeats it. */
@AppTest
@ExtendWith(OutputCaptureExtension.class)
class RefusedValuesSqlTest {
    private static final String SECRET = "Orla Penhallow";

    @Autowired
    EntityManager entities;

    @Autowired
    JdbcTemplate jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Trail trail;

    @Autowired
    SamplePeople people;

    @Test
    void staysOutOfTheLogOfOneStatement(CapturedOutput output) {
        UUID id = people.person(SECRET, Role.HELPER).personId();
        assertThatThrownBy(() -> transaction.executeWithoutResult(status -> {
                    trail.byShop();
                    entities.createNativeQuery(
                                    "insert into person (id, name, role, created_at, version) values (?, ?, 'helper', ?, 0)")
                            .setParameter(1, id)
                            .setParameter(2, SECRET)
                            .setParameter(3, java.time.Instant.EPOCH)
                            .executeUpdate();
                }))
                .isInstanceOf(RuntimeException.class)
                .hasMessageContaining("person_pkey")
                .hasMessageNotContaining(SECRET)
                .hasMessageNotContaining(id.toString());
        assertThat(output.getAll()).doesNotContain(SECRET).doesNotContain(id.toString());
    }

    @Test
    void staysOutOfTheMessageOfABatch(CapturedOutput output) {
        UUID id = people.person(SECRET, Role.HELPER).personId();
        assertThatThrownBy(() -> transaction.executeWithoutResult(status -> {
                    trail.byShop();
                    jdbc.batchUpdate(
                            "insert into person (id, name, role, created_at, version) values (?, ?, 'helper', '1970-01-01', 0)",
                            List.of(new Object[] {id, SECRET}, new Object[] {id, SECRET}));
                }))
                .isInstanceOf(DataIntegrityViolationException.class)
                .hasMessageNotContaining(SECRET)
                .hasMessageNotContaining(id.toString());
        assertThat(output.getAll()).doesNotContain(SECRET);
    }
}
