package org.tallywright.people;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.RowMapper;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.NotHere;
import org.tallywright.web.Role;

/** Names of people, for other modules. */
@Component
public class People {
    private static final RowMapper<PersonName> NAME = (row, n) ->
            new PersonName(row.getObject("id", UUID.class), row.getString("name"), Role.of(row.getString("role")));

    private final JdbcClient jdbc;

    People(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Active people who log hours, by name. */
    public List<PersonName> crew() {
        return jdbc.sql(
                        "select id, name, role from person where active and role <> 'bookkeeper' order by lower(name), id")
                .query(NAME)
                .list();
    }

    /** @throws NotHere for an unknown id */
    public PersonName named(UUID id) {
        return jdbc.sql("select id, name, role from person where id = ?")
                .param(id)
                .query(NAME)
                .optional()
                .orElseThrow(() -> new NotHere("person"));
    }
}
