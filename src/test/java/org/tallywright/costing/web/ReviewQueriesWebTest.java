package org.tallywright.costing.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.costing.SampleCosts;
import org.tallywright.costing.SampleCosts.Seat;
import org.tallywright.jobs.Closing;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.SampleJobs;

/** The review asks the database as often for a long job as for a short one. Statements are counted in the log. */
@AppTest
class ReviewQueriesWebTest {
    private static final List<String> LOGGERS =
            List.of("org.springframework.jdbc.core.JdbcTemplate", "org.hibernate.SQL");

    @Autowired
    MockMvc mvc;

    @Autowired
    SampleCosts sample;

    @Autowired
    SampleJobs jobs;

    @Autowired
    JobDesk desk;

    @Test
    void staysFlatHoweverMuchTheJobHolds() throws Exception {
        Seat seat = sample.worked();
        List<String> few = statements(seat);
        for (int i = 0; i < 40; i++) {
            sample.entry(
                    seat.job(),
                    i % 2 == 0 ? seat.rip() : null,
                    seat.owner(),
                    SampleCosts.EARLY.plusDays(i % 20),
                    "rework",
                    15,
                    "Again " + i);
        }
        for (int i = 0; i < 20; i++) {
            jobs.task(
                    seat.job(),
                    null,
                    jobs.kind("rip_hardwood", "Rip hardwood", "Mill", "lf", "0.015"),
                    "9",
                    seat.owner());
        }
        assertThat(statements(seat)).hasSameSizeAs(few);
        assertThat(few).hasSizeLessThanOrEqualTo(25);
    }

    @Test
    void readsAFrozenReviewInFewerStatements() throws Exception {
        Seat seat = sample.worked();
        int running = statements(seat).size();
        desk.close(
                seat.job().id(),
                new Closing(Map.of(seat.travel(), Closing.TaskAnswer.DONE), true, true),
                seat.owner().personId());
        assertThat(statements(seat)).hasSizeLessThan(running);
    }

    private List<String> statements(Seat seat) throws Exception {
        ListAppender<ILoggingEvent> seen = new ListAppender<>();
        seen.start();
        for (String name : LOGGERS) {
            logger(name).setLevel(Level.DEBUG);
            logger(name).addAppender(seen);
        }
        try {
            mvc.perform(get("/jobs/26-001/review").with(signedIn(seat.owner()))).andExpect(status().isOk());
        } finally {
            for (String name : LOGGERS) {
                logger(name).detachAppender(seen);
                logger(name).setLevel(null);
            }
        }
        List<String> statements = seen.list.stream()
                .map(ILoggingEvent::getFormattedMessage)
                .filter(message -> message.startsWith("select")
                        || message.startsWith("Executing prepared SQL statement")
                        || message.startsWith("Executing SQL query"))
                .toList();
        assertThat(statements).as("statements are seen in the log").hasSizeGreaterThan(5);
        return statements;
    }

    private static Logger logger(String name) {
        return (Logger) LoggerFactory.getLogger(name);
    }
}
