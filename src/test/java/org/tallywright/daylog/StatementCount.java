package org.tallywright.daylog;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.util.List;
import org.slf4j.LoggerFactory;

/** Counts the SQL statements and batches that Spring's JDBC support sends while something runs on this thread; sessions aside. */
public final class StatementCount {
    private StatementCount() {}

    /** Something that may fail. */
    public interface Act {
        void run() throws Exception;
    }

    public static List<String> during(Act act) throws Exception {
        Logger logger = (Logger) LoggerFactory.getLogger("org.springframework.jdbc.core.JdbcTemplate");
        Level before = logger.getLevel();
        ListAppender<ILoggingEvent> seen = new ListAppender<>();
        String thread = Thread.currentThread().getName();
        seen.start();
        logger.setLevel(Level.DEBUG);
        logger.setAdditive(false);
        logger.addAppender(seen);
        try {
            act.run();
        } finally {
            logger.detachAppender(seen);
            logger.setLevel(before);
            logger.setAdditive(true);
        }
        return seen.list.stream()
                .filter(event -> event.getThreadName().equals(thread))
                .map(ILoggingEvent::getFormattedMessage)
                .filter(text -> text.startsWith("Executing prepared SQL statement [")
                        || text.startsWith("Executing SQL batch update")
                        || text.startsWith("Executing SQL query"))
                .filter(text -> !text.contains("SPRING_SESSION"))
                .toList();
    }
}
