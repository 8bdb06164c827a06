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

    /** Name and mark of each table: its rows and the last transaction that wrote one. Reads no row's content. */
    static final String MARKS = """
            select t.relname, (xpath('/row/m/text()', query_to_xml(format(
                'select row(count(*), max(xmin::text::bigint))::text as m from %I.%I', 'public', t.relname),
                false, true, '')))[1]::text
            from (""" + TABLES + ") t";

    private static final String RESTORE = """
            do $$
            declare names text;
            begin
              set local session_replication_role = replica;
              select string_agg(quote_ident(attname), ',' order by attnum) into names from pg_attribute
                where attrelid = 'public.%1$s'::regclass and attnum > 0 and not attisdropped and attgenerated = '';
              delete from public.%1$s;
              execute format('insert into public.%1$s (%%s) overriding system value select %%s from whole.%1$s', names, names);
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

    /** Puts the rows of one table back. No trigger and no foreign key looks on, so tables may come in any order. */
    static String restore(String table) {
        return RESTORE.formatted(table);
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
