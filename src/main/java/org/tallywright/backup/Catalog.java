package org.tallywright.backup;

import java.sql.Array;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** Asks the database what tables, sequences and foreign keys there are in the schema of the application. */
final class Catalog {
    /** What belongs to a running server or to migrating, not to the shop. */
    private static final String SKIPPED =
            "('flyway_schema_history', 'spring_session', 'spring_session_attributes', 'sign_in_attempt')";

    private static final String TABLES = """
            select c.relname, quote_ident(c.relname),
              array_agg(a.attname::text order by a.attnum),
              string_agg(quote_ident(a.attname), ', ' order by a.attnum),
              coalesce(
                (select string_agg(quote_ident(k.attname)
                    || case when k.attcollation <> 0 then ' collate "C"' else '' end, ', ' order by p.place)
                 from pg_index i
                 cross join lateral unnest(i.indkey::int2[]) with ordinality as p (attnum, place)
                 join pg_attribute k on k.attrelid = c.oid and k.attnum = p.attnum
                 where i.indrelid = c.oid and i.indisprimary),
                quote_ident(c.relname) || '::text collate "C"')
            from pg_class c
            join pg_attribute a on a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped and a.attgenerated = ''
            where c.relnamespace = current_schema()::regnamespace and c.relkind = 'r'
              and c.relname not in\s""" + SKIPPED + """

              and not exists (select from pg_depend d where d.objid = c.oid and d.deptype = 'e')
            group by c.oid, c.relname order by c.relname collate "C"
            """;

    /** Without those of the tables that are skipped; an identity depends internally on its column, a serial otherwise. */
    private static final String SEQUENCES = """
            select s.relname, quote_ident(s.relname) from pg_class s
            where s.relnamespace = current_schema()::regnamespace and s.relkind = 'S'
              and not exists (select from pg_depend d join pg_class t on t.oid = d.refobjid
                where d.objid = s.oid and d.deptype in ('a', 'i') and t.relname in\s""" + SKIPPED + """
            )
            order by s.relname collate "C"
            """;

    private static final String FOREIGN_KEYS = """
            select format('alter table %s drop constraint %I', conrelid::regclass, conname),
              format('alter table %s add constraint %I %s', conrelid::regclass, conname, pg_get_constraintdef(oid))
            from pg_constraint
            where contype = 'f' and connamespace = current_schema()::regnamespace and conparentid = 0
            order by conrelid::regclass::text, conname
            """;

    /** The statements that take a foreign key away and put it back as it was. */
    record ForeignKey(String drop, String add) {}

    private final Connection connection;

    Catalog(Connection connection) {
        this.connection = connection;
    }

    List<TableShape> tables() throws SQLException {
        return list(
                TABLES,
                row -> new TableShape(
                        row.getString(1),
                        row.getString(2),
                        texts(row.getArray(3)),
                        row.getString(4),
                        row.getString(5)));
    }

    List<Manifest.Sequence> sequences() throws SQLException {
        List<Manifest.Sequence> sequences = new ArrayList<>();
        for (String[] name : list(SEQUENCES, row -> new String[] {row.getString(1), row.getString(2)})) {
            sequences.addAll(list(
                    "select last_value, is_called from " + name[1],
                    row -> new Manifest.Sequence(name[0], row.getLong(1), row.getBoolean(2))));
        }
        return sequences;
    }

    List<ForeignKey> foreignKeys() throws SQLException {
        return list(FOREIGN_KEYS, row -> new ForeignKey(row.getString(1), row.getString(2)));
    }

    /** The newest migration applied; "0" where there is none. */
    String schemaVersion() throws SQLException {
        return list(
                        "select coalesce((select version from flyway_schema_history where success and version is not null"
                                + " order by installed_rank desc limit 1), '0')",
                        row -> row.getString(1))
                .get(0);
    }

    boolean has(String table) throws SQLException {
        return list("select to_regclass('" + table + "') is not null", row -> row.getBoolean(1))
                .get(0);
    }

    /** A shop is empty until it has its first person, who is its owner. */
    boolean shopIsEmpty() throws SQLException {
        return !has("person")
                || !list("select exists (select from person)", row -> row.getBoolean(1))
                        .get(0);
    }

    private static List<String> texts(Array array) throws SQLException {
        return List.of((String[]) array.getArray());
    }

    private interface Reading<T> {
        T read(ResultSet row) throws SQLException;
    }

    private <T> List<T> list(String sql, Reading<T> reading) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            List<T> result = new ArrayList<>();
            while (rows.next()) {
                result.add(reading.read(rows));
            }
            return result;
        }
    }
}
