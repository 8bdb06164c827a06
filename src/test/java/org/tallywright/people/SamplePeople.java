package org.tallywright.people;

import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.authentication;

import java.math.BigDecimal;
import java.sql.Timestamp;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.stereotype.Component;
import org.springframework.test.web.servlet.request.RequestPostProcessor;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.TestClock;
import org.tallywright.shared.Ids;
import org.tallywright.trail.Trail;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/**
 * A shop and its people for tests: {@code SignedIn ada = people.owner(); mvc.perform(get("/jobs").with(signedIn(ada)))}.
 * The first person also makes the shop, in New York.
 */
@Component
public class SamplePeople {
    private final JdbcClient jdbc;
    private final Trail trail;
    private final TransactionTemplate transaction;

    SamplePeople(JdbcClient jdbc, Trail trail, TransactionTemplate transaction) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.transaction = transaction;
    }

    public SignedIn owner() {
        return person("Ada Fenn", Role.OWNER);
    }

    public SignedIn lead() {
        return person("Brannoc Tull", Role.LEAD);
    }

    public SignedIn helper() {
        return person("Jonas Pell", Role.HELPER);
    }

    public SignedIn bookkeeper() {
        return person("Mirel Oake", Role.BOOKKEEPER);
    }

    public SignedIn person(String name, Role role) {
        UUID id = Ids.next();
        Timestamp now = Timestamp.from(TestClock.START);
        transaction.executeWithoutResult(status -> {
            trail.byShop();
            shop();
            jdbc.sql("insert into person (id, name, role, created_at, version) values (?, ?, ?, ?, 0)")
                    .params(id, name, role.code(), now)
                    .update();
            jdbc.sql("""
                            insert into account (person_id, sign_in_name, password_hash, created_at, version)
                            values (?, ?, '{argon2}none', ?, 0)""").params(id, "p-" + id, now).update();
        });
        return new SignedIn(id, name, role);
    }

    /** The shop, when it is not there yet; imperial, dollars, overhead 15.00 an hour, margin 15 %. */
    public void shop() {
        trail.byShop();
        jdbc.sql("""
                        insert into shop (id, name, time_zone, overhead_rate, created_at, version)
                        values (1, 'Fenn Joinery', 'America/New_York', 15, ?, 0) on conflict do nothing""").param(Timestamp.from(TestClock.START)).update();
    }

    /** Pay per hour from a day on, burden in percent of it. */
    public void paid(SignedIn person, LocalDate from, String wage, String burden) {
        transaction.executeWithoutResult(status -> {
            trail.byShop();
            jdbc.sql("""
                            insert into wage (id, person_id, from_date, wage_amount, burden_percent, version)
                            values (?, ?, ?, ?, ?, 0)""")
                    .params(Ids.next(), person.personId(), from, new BigDecimal(wage), new BigDecimal(burden))
                    .update();
        });
    }

    /** Changes rows of which the database keeps a trail, in the name of the shop. */
    public void asShop(Runnable change) {
        transaction.executeWithoutResult(status -> {
            trail.byShop();
            change.run();
        });
    }

    /** Makes a request that person's. */
    public static RequestPostProcessor signedIn(SignedIn me) {
        return authentication(UsernamePasswordAuthenticationToken.authenticated(
                me, null, List.of(new SimpleGrantedAuthority("ROLE_" + me.role().name()))));
    }
}
