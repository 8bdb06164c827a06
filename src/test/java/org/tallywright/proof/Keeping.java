package org.tallywright.proof;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;

/** SQL that keeps all rows of the shop aside, compares and brings them back. */
final class Keeping {
    private static final String TABLES = """
            select relname from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'
            and relname <> 'flyway_schema_history' and relname not like 'spring_session%' and relname <> 'sign_in_attempt'
            order by 1""";

    /** Name and hash of each table. */
    static final String HASHES = """
            select t.relname, (xpath('/row/h/text()', query_to_xml(format(
                'select md5(string_agg(r::text, chr(10) order by r::text)) as h from %I.%I r', 'public', t.relname),
                false, true, '')))[1]::text
            from (""" + TABLES + ") t";

    static final String RESTORE = """
            do $$
            declare t record;
            begin
              set local session_replication_role = replica;
              for t in select c.relname, string_agg(quote_ident(a.attname), ',' order by a.attnum) as names
                  from pg_class c join pg_attribute a on a.attrelid = c.oid and a.attnum > 0
                    and not a.attisdropped and a.attgenerated = ''
                  where c.relnamespace = 'public'::regnamespace and c.relkind = 'r'
                    and to_regclass('whole.' || quote_ident(c.relname)) is not null
                  group by c.relname loop
                execute format('delete from public.%I', t.relname);
                execute format('insert into public.%I (%s) overriding system value select %s from whole.%I',
                  t.relname, t.names, t.names, t.relname);
              end loop;
              set local session_replication_role = origin;
            end $$""";

    private Keeping() {}

    /** The tables whose hashes differ. */
    static Set<String> changed(Map<String, String> before, Map<String, String> after) {
        Set<String> tables = new TreeSet<>();
        after.forEach((table, hash) -> {
            if (!hash.equals(before.get(table))) {
                tables.add(table);
            }
        });
        return tables;
    }

    static void keep(JdbcClient jdbc) {
        List<String> tables = jdbc.sql(TABLES).query(String.class).list();
        jdbc.sql("drop schema if exists whole cascade").update();
        jdbc.sql("create schema whole").update();
        jdbc.sql(tables.stream()
                        .map(table -> "create table whole." + table + " as table public." + table)
                        .collect(Collectors.joining(";")))
                .update();
    }
}
