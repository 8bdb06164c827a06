package org.tallywright.people;

import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.web.PersonOfRequest;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** One query for each request: the signed-in person with the role he has now. */
@Component
class PersonNow implements PersonOfRequest {
    private final JdbcClient jdbc;

    PersonNow(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Optional<SignedIn> current(SignedIn remembered) {
        return jdbc.sql("""
                        select p.id, p.name, p.role, a.session_epoch from person p join account a on a.person_id = p.id
                        where p.id = ? and p.active and a.session_epoch = ?""")
                .params(remembered.personId(), remembered.epoch())
                .query((row, n) -> new SignedIn(
                        row.getObject("id", UUID.class),
                        row.getString("name"),
                        Role.of(row.getString("role")),
                        row.getInt("session_epoch")))
                .optional();
    }
}
