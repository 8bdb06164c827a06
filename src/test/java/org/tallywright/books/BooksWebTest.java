package org.tallywright.books;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.io.IOException;
import java.math.BigDecimal;
import java.sql.Timestamp;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.trail.Trail;
import org.tallywright.web.SignedIn;

@AppTest
class BooksWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Trail trail;

    SignedIn jonas;
    SignedIn mirel;

    @BeforeEach
    void jonasWorksAndGetsARaise() {
        jonas = people.helper();
        mirel = people.bookkeeper();
        people.paid(jonas, LocalDate.of(2026, 1, 1), "22.00", "27");
        people.paid(jonas, LocalDate.of(2026, 11, 20), "24.00", "27");
        log(LocalDate.of(2026, 11, 19), 90);
        log(LocalDate.of(2026, 11, 20), 90);
    }

    private void log(LocalDate on, int minutes) {
        transaction.executeWithoutResult(status -> {
            trail.byShop();
            jdbc.sql("""
                            insert into time_entry (id, person_id, on_date, account, hour_class, minutes, note, logged_by, logged_at, version)
                            values (?, ?, ?, 'maintenance', 'clean-up', ?, 'a private word', ?, ?, 0)""")
                    .params(
                            Ids.next(),
                            jonas.personId(),
                            on,
                            minutes,
                            jonas.personId(),
                            Timestamp.from(TestClock.START))
                    .update();
        });
    }

    /** 1.5 h at 22.00 and at 24.00; burdened 22 x 1.27 = 27.94 and 24 x 1.27 = 30.48. */
    @Test
    void paysEachHourAtTheRateOfItsDay() throws Exception {
        String csv = download("/books/hours.csv");
        assertThat(csv)
                .contains("2026-11-19,Jonas Pell,,maintenance,clean-up,90,1.50,22.00,27.000,27.94,33.00,41.91")
                .contains("2026-11-20,Jonas Pell,,maintenance,clean-up,90,1.50,24.00,27.000,30.48,36.00,45.72");
        mvc.perform(get("/books").with(signedIn(mirel))).andExpect(content().string(containsString("69.00")));
    }

    /** 35 minutes at 24.00 x 1.27 = 30.48 are 17.78; each entry is rounded once, so file and page agree to the cent. */
    @Test
    void addsUpToTheSameOnThePageAndInTheFile() throws Exception {
        for (int day = 21; day <= 25; day++) {
            log(LocalDate.of(2026, 11, day), 35);
        }
        BigDecimal inFile = download("/books/hours.csv")
                .lines()
                .skip(1)
                .map(line -> new BigDecimal(line.split(",", -1)[11]))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        assertThat(inFile).isEqualByComparingTo("176.53");
        mvc.perform(get("/books")
                        .param("from", "2026-11-01")
                        .param("to", "2026-11-25")
                        .with(signedIn(mirel)))
                .andExpect(content().string(containsString("176.53")));
    }

    @Test
    void leavesNotesOut() throws Exception {
        assertThat(download("/books/hours.csv")).doesNotContain("private word");
    }

    @Test
    void saysWhichHoursHaveNoWage() throws Exception {
        log(LocalDate.of(2025, 12, 30), 60);
        mvc.perform(get("/books")
                        .param("from", "2025-12-01")
                        .param("to", "2026-11-25")
                        .with(signedIn(mirel)))
                .andExpect(content().string(containsString("1.00 h without a wage")));
    }

    @Test
    void refusesAPeriodThatCannotBe() throws Exception {
        mvc.perform(get("/books").param("from", "soon").with(signedIn(mirel)))
                .andExpect(status().isUnprocessableContent());
        mvc.perform(get("/books/hours.csv")
                        .param("from", "2026-11-02")
                        .param("to", "2026-11-01")
                        .with(signedIn(mirel)))
                .andExpect(status().isUnprocessableContent());
    }

    @Test
    void isClosedToThoseWhoMayNotSeePay() throws Exception {
        mvc.perform(get("/books/hours.csv").with(signedIn(jonas))).andExpect(status().isForbidden());
        mvc.perform(get("/books").with(signedIn(people.lead()))).andExpect(status().isForbidden());
    }

    /** CWE-1236: text that a spreadsheet takes for a formula is disarmed. */
    @Test
    void disarmsFormulas() throws IOException {
        StringBuilder out = new StringBuilder();
        CsvFile.write(
                out, List.of("supplier", "amount"), List.<Object[]>of(new Object[] {"=1+1", new BigDecimal("-3.50")}));
        assertThat(out.toString()).contains("'=1+1,-3.50");
    }

    private String download(String path) throws Exception {
        return mvc.perform(get(path)
                        .param("from", "2026-11-01")
                        .param("to", "2026-11-25")
                        .with(signedIn(mirel)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }
}
