package org.tallywright.people;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Slows guessing: five wrong tries for one sign-in name from one address, thirty for one name or from one address in all,
 * and for a quarter of an hour such tries are refused unheard. One stranger cannot keep a person out for long. Counted in the database, so that it holds over several app instances. The limits are
 * common practice, no source.
 */
@Component
class SignInThrottle {
    private static final Duration WINDOW = Duration.ofMinutes(15);
    private static final int PER_NAME_AND_ADDRESS = 5;
    private static final int PER_NAME = 30;
    private static final int PER_ADDRESS = 30;

    private final JdbcClient jdbc;
    private final Clock clock;

    SignInThrottle(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    boolean mustWait(String signInName, String address) {
        return failures(bothKey(signInName, address)) >= PER_NAME_AND_ADDRESS
                || failures(nameKey(signInName)) >= PER_NAME
                || failures(addressKey(address)) >= PER_ADDRESS;
    }

    private int failures(String subject) {
        return jdbc.sql("""
                        select count(*) from sign_in_attempt a where subject = ? and at > ? and failed
                        and not exists (select from sign_in_attempt b where b.subject = a.subject and not b.failed and b.at >= a.at)""")
                .params(subject, Timestamp.from(clock.instant().minus(WINDOW)))
                .query(Integer.class)
                .single();
    }

    @Transactional(propagation = Propagation.REQUIRES_NEW)
    void record(String signInName, String address, boolean failed) {
        Instant now = clock.instant();
        String both = bothKey(signInName, address);
        List<String> failing = List.of(both, nameKey(signInName), addressKey(address));
        for (String subject : failed ? failing : List.of(both, nameKey(signInName))) {
            jdbc.sql("insert into sign_in_attempt (subject, at, failed) values (?, ?, ?)")
                    .params(subject, Timestamp.from(now), failed)
                    .update();
        }
        jdbc.sql("delete from sign_in_attempt where at < ?")
                .param(Timestamp.from(now.minus(Duration.ofDays(1))))
                .update();
    }

    private static String nameKey(String signInName) {
        String name = signInName.strip().toLowerCase(Locale.ROOT);
        return "name:" + name.substring(0, Math.min(name.length(), 80));
    }

    private static String bothKey(String signInName, String address) {
        return nameKey(signInName) + " " + addressKey(address);
    }

    private static String addressKey(String address) {
        return "from:" + address;
    }
}
