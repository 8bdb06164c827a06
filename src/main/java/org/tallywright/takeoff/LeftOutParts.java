package org.tallywright.takeoff;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Ids;

/** The lines of the formulas that somebody left out of a piece, by the name that their part remembers. */
@Component
class LeftOutParts {
    private final JdbcClient jdbc;

    LeftOutParts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Set<String> of(UUID piece) {
        return new LinkedHashSet<>(jdbc.sql("select rule from part_left_out where piece_id = ? order by rule")
                .param(piece)
                .query(String.class)
                .list());
    }

    /** By piece; one query, however many. */
    Map<UUID, Set<String>> ofJob(UUID job) {
        Map<UUID, Set<String>> rules = new HashMap<>();
        jdbc.sql("select piece_id, rule from part_left_out where job_id = ?")
                .param(job)
                .query(row -> {
                    rules.computeIfAbsent(row.getObject(1, UUID.class), piece -> new HashSet<>())
                            .add(row.getString(2));
                });
        return rules;
    }

    void add(UUID job, UUID piece, String rule) {
        jdbc.sql("insert into part_left_out (id, job_id, piece_id, rule) values (?, ?, ?, ?) on conflict do nothing")
                .params(Ids.next(), job, piece, rule)
                .update();
    }

    void takeBack(UUID piece, String rule) {
        jdbc.sql("delete from part_left_out where piece_id = ? and rule = ?")
                .params(piece, rule)
                .update();
    }
}
