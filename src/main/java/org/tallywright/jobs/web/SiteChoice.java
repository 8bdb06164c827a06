package org.tallywright.jobs.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Sites and clients to pick from: those of the latest jobs, or those that hold the words searched for. */
@Component
class SiteChoice {
    private static final int MOST = 40;

    private final JdbcClient jdbc;

    SiteChoice(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** @param chosen is always among them */
    Map<String, String> sites(String words, String chosen) {
        return choice("""
                select s.id, c.name || ', ' || s.address
                from site s join client c on c.id = s.client_id
                where s.id = cast(:chosen as uuid) or :words = ''
                   or strpos(lower(c.name || ' ' || s.address), lower(:words)) > 0
                order by s.id = cast(:chosen as uuid) desc nulls last,
                    (select max(j.opened_on) from job j where j.site_id = s.id) desc nulls last, lower(c.name), s.id
                limit :most""", words, chosen);
    }

    Map<String, String> clients(String words, String chosen) {
        return choice("""
                select c.id, c.name from client c
                where c.id = cast(:chosen as uuid) or :words = ''
                   or strpos(lower(c.name), lower(:words)) > 0
                order by c.id = cast(:chosen as uuid) desc nulls last,
                    (select max(j.opened_on) from job j where j.client_id = c.id) desc nulls last, lower(c.name), c.id
                limit :most""", words, chosen);
    }

    private Map<String, String> choice(String sql, String words, String chosen) {
        Map<String, String> options = new LinkedHashMap<>();
        jdbc.sql(sql)
                .param("words", words.replaceAll("\\p{Cntrl}", " ").strip())
                .param("chosen", uuid(chosen))
                .param("most", MOST)
                .query(row -> {
                    options.put(row.getString(1), row.getString(2));
                });
        return options;
    }

    private static @Nullable String uuid(String typed) {
        try {
            return UUID.fromString(typed.strip()).toString();
        } catch (IllegalArgumentException e) {
            return null;
        }
    }
}
