package org.tallywright.catalog;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Looks up the shop's stages. */
@Component
public class Stages {
    private final JdbcClient jdbc;

    Stages(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Every stage in order, those out of use too. */
    public List<StageCard> all() {
        return jdbc.sql("select * from stage order by position")
                .query(Stages::card)
                .list();
    }

    /** The stages in use, in order. */
    public List<StageCard> active() {
        return all().stream().filter(StageCard::active).toList();
    }

    public Optional<StageCard> find(UUID id) {
        return jdbc.sql("select * from stage where id = :id")
                .param("id", id)
                .query(Stages::card)
                .optional();
    }

    /** The stage of that name, whatever its capitals. */
    public Optional<StageCard> named(String name) {
        return jdbc.sql("select * from stage where lower(name) = lower(:name)")
                .param("name", name.strip())
                .query(Stages::card)
                .optional();
    }

    private static StageCard card(ResultSet row, int number) throws SQLException {
        return new StageCard(
                row.getObject("id", UUID.class),
                row.getString("name"),
                row.getInt("position"),
                row.getBoolean("active"),
                row.getInt("version"));
    }
}
