package org.tallywright;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

@AppTest
class AppTestSqlTest {
    @Autowired
    Clock clock;

    @Autowired
    TestClock testClock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    DatabaseReset reset;

    @Autowired
    MockMvc mvc;

    @LocalServerPort
    int port;

    @BeforeEach
    void startsAtTheFixedInstant() {
        assertThat(clock.instant()).isEqualTo(TestClock.START);
    }

    @Test
    void movesTheClockOfTheApplication() {
        testClock.advance(Duration.ofDays(1));
        assertThat(clock.instant()).isEqualTo(TestClock.START.plus(Duration.ofDays(1)));
    }

    @Test
    void movesTheClockAgainFromTheStart() {
        testClock.advance(Duration.ofDays(2));
        assertThat(clock.instant()).isEqualTo(TestClock.START.plus(Duration.ofDays(2)));
    }

    @Test
    void runsOnTheMajorVersionThatTheApplicationShips() {
        assertThat(jdbc.sql("show server_version").query(String.class).single()).startsWith("18.");
    }

    @Test
    void servesMockAndRealRequests() {
        assertThat(mvc).isNotNull();
        assertThat(port).isPositive();
    }

    @Test
    void emptiesTablesAndPutsBackWhatMigrationsWrote() {
        jdbc.sql("create table own_rows (id int primary key)").update();
        jdbc.sql(
                        "create table seeded_rows (id int generated always as identity, twice int generated always as (id * 2) stored)")
                .update();
        jdbc.sql("create table seed.seeded_rows as select 7 as id, 14 as twice").update();
        try {
            jdbc.sql("insert into own_rows values (1)").update();
            reset.emptyShop();
            assertThat(jdbc.sql("select count(*) from own_rows")
                            .query(Integer.class)
                            .single())
                    .isZero();
            assertThat(jdbc.sql("select twice from seeded_rows")
                            .query(Integer.class)
                            .list())
                    .containsExactly(14);
        } finally {
            jdbc.sql("drop table own_rows, seeded_rows, seed.seeded_rows").update();
        }
    }
}
