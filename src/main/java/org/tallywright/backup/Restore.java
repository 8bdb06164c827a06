package org.tallywright.backup;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.springframework.stereotype.Service;

/**
 * Fills an empty shop from a backup file, in one transaction: all of it, or nothing.
 *
 * <p>Foreign keys are taken away and put back, and triggers rest meanwhile; that asks for the owner of the tables only,
 * not for a superuser, works in whatever circle the keys run, and checks every key anew. At the end each table is
 * written out again and its hash compared with the file's.
 */
@Service
public class Restore {
    private final DataSource target;

    public Restore(DataSource target) {
        this.target = target;
    }

    /** @throws RestoreRefused where the shop is not empty, its tables are of another version, or the file is damaged */
    public Manifest intoEmptyShop(Path path) {
        try (BackupFile file = BackupFile.open(path);
                Connection connection = target.getConnection()) {
            connection.setAutoCommit(false);
            try {
                restore(file, connection);
                connection.commit();
                return file.manifest();
            } catch (IOException e) {
                throw file.damaged(e);
            } catch (SQLException e) {
                if (isAboutValues(e)) {
                    throw file.damaged(e);
                }
                throw e;
            } finally {
                connection.rollback();
                connection.setAutoCommit(true);
            }
        } catch (SQLException | IOException e) {
            throw new RestoreRefused("The database refused the backup file " + path + " (" + e.getMessage() + ").", e);
        }
    }

    /** Classes of the SQL standard: 22 unfit value, 23 constraint broken; 57014 is a copy that broke off. */
    private static boolean isAboutValues(SQLException e) {
        String state = String.valueOf(e.getSQLState());
        return state.startsWith("22") || state.startsWith("23") || state.equals("57014");
    }

    private static void restore(BackupFile file, Connection connection) throws SQLException, IOException {
        Catalog catalog = new Catalog(connection);
        refuseUnlessEmpty(catalog);
        refuseOtherVersion(file.manifest(), catalog);
        Map<String, TableShape> tables =
                catalog.tables().stream().collect(Collectors.toMap(TableShape::name, Function.identity()));
        refuseOtherTables(file, tables);
        try (Statement statement = connection.createStatement()) {
            List<Catalog.ForeignKey> keys = catalog.foreignKeys();
            prepare(statement, keys, tables);
            TableCopy copy = new TableCopy(connection);
            load(file, copy, tables);
            finish(statement, keys, tables, file.manifest());
            prove(file, copy, tables);
        }
    }

    private static void refuseUnlessEmpty(Catalog catalog) throws SQLException {
        if (!catalog.shopIsEmpty()) {
            throw RestoreRefused.notEmpty();
        }
    }

    private static void refuseOtherVersion(Manifest manifest, Catalog catalog) throws SQLException {
        String here = catalog.schemaVersion();
        if (!here.equals(manifest.schemaVersion())) {
            throw new RestoreRefused("The backup file is of version " + manifest.schemaVersion()
                    + " and the tables here are of version " + here + "; restore it at the start into a new data folder"
                    + " or a new database.");
        }
    }

    private static void refuseOtherTables(BackupFile file, Map<String, TableShape> here) {
        boolean same = file.manifest().tables().size() == here.size()
                && file.manifest().tables().stream().allMatch(table -> {
                    TableShape shape = here.get(table.name());
                    return shape != null && shape.columns().equals(table.columns());
                });
        if (!same) {
            throw new RestoreRefused("The tables in the backup file are not those of this version of Tallywright.");
        }
    }

    private static void prepare(Statement statement, List<Catalog.ForeignKey> keys, Map<String, TableShape> tables)
            throws SQLException {
        statement.execute("set local lock_timeout = '20s'");
        for (Catalog.ForeignKey key : keys) {
            statement.execute(key.drop());
        }
        for (TableShape table : tables.values()) {
            statement.execute("alter table " + table.quoted() + " disable trigger user");
        }
        statement.execute(
                "truncate " + tables.values().stream().map(TableShape::quoted).collect(Collectors.joining(", ")));
    }

    private static void load(BackupFile file, TableCopy copy, Map<String, TableShape> tables)
            throws SQLException, IOException {
        for (Manifest.Table promised : file.manifest().tables()) {
            try (InputStream csv = file.csv(promised)) {
                compare(file, promised, copy.in(shape(tables, promised), csv));
            }
        }
    }

    private static void finish(
            Statement statement, List<Catalog.ForeignKey> keys, Map<String, TableShape> tables, Manifest manifest)
            throws SQLException {
        for (Manifest.Sequence sequence : manifest.sequences()) {
            statement.execute("select setval(quote_ident('" + sequence.name().replace("'", "''") + "')::regclass, "
                    + sequence.lastValue() + ", " + sequence.called() + ")");
        }
        statement.execute("set constraints all immediate");
        for (TableShape table : tables.values()) {
            statement.execute("alter table " + table.quoted() + " enable trigger user");
        }
        for (Catalog.ForeignKey key : keys) {
            statement.execute(key.add());
        }
    }

    private static void prove(BackupFile file, TableCopy copy, Map<String, TableShape> tables)
            throws SQLException, IOException {
        for (Manifest.Table promised : file.manifest().tables()) {
            compare(file, promised, copy.out(shape(tables, promised), OutputStream.nullOutputStream()));
        }
    }

    private static void compare(BackupFile file, Manifest.Table promised, Manifest.Table found) {
        if (!promised.equals(found)) {
            throw file.damaged(null);
        }
    }

    private static TableShape shape(Map<String, TableShape> tables, Manifest.Table table) {
        TableShape shape = tables.get(table.name());
        if (shape == null) {
            throw new IllegalStateException("no table " + table.name());
        }
        return shape;
    }
}
