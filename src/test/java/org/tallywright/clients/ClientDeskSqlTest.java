package org.tallywright.clients;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Stale;

@AppTest
class ClientDeskSqlTest {
    @Autowired
    ClientDesk desk;

    @Autowired
    ClientBook book;

    @Autowired
    JdbcClient jdbc;

    @Test
    void takesTapsAtTheSameMomentForOne() throws Exception {
        UUID id = Ids.next();
        int taps = 4;
        CyclicBarrier together = new CyclicBarrier(taps);
        Callable<Boolean> tap = () -> {
            together.await(10, TimeUnit.SECONDS);
            desk.save(new SaveClient(id, null, "Tessaly Quorn", "", "", ""));
            return true;
        };
        ExecutorService hands = Executors.newFixedThreadPool(taps);
        try {
            for (Future<Boolean> done :
                    IntStream.range(0, taps).mapToObj(i -> hands.submit(tap)).toList()) {
                assertThat(done.get(20, TimeUnit.SECONDS)).isTrue();
            }
        } finally {
            hands.shutdownNow();
        }
        assertThat(book.all()).singleElement().extracting(ClientCard::version).isEqualTo(0);
    }

    @Test
    void raisesTheVersionOnlyWhenSomethingChanged() {
        UUID id = Ids.next();
        desk.save(new SaveClient(id, null, "Tessaly Quorn", "", "", ""));
        desk.save(new SaveClient(id, 0, "Tessaly Quorn", "", "", ""));
        assertThat(book.card(id).version()).isZero();
        desk.save(new SaveClient(id, 0, "Tessaly Quorn", "555-0107", "", ""));
        assertThat(book.card(id).version()).isEqualTo(1);
        assertThatThrownBy(() -> desk.save(new SaveClient(id, 0, "T. Quorn", "", "", "")))
                .isInstanceOfSatisfying(
                        Stale.class,
                        stale -> assertThat(stale.rows())
                                .filteredOn(Stale.Row::differs)
                                .extracting(Stale.Row::label)
                                .containsExactly("Name", "Phone"));
    }

    @Test
    void keepsWhatTheDatabaseRules() {
        assertThatThrownBy(() -> jdbc.sql("insert into client (id, name, version) values (?, '  ', 0)")
                        .param(Ids.next())
                        .update())
                .isInstanceOf(DataIntegrityViolationException.class)
                .hasMessageContaining("client_name_given");
        assertThatThrownBy(() -> jdbc.sql("insert into site (id, client_id, address, version) values (?, ?, 'x', 0)")
                        .params(Ids.next(), Ids.next())
                        .update())
                .hasMessageContaining("site_client_fk");
    }
}
