package org.tallywright.backup;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.sql.DataSource;
import org.springframework.stereotype.Service;
import tools.jackson.databind.json.JsonMapper;

/**
 * Writes the whole shop as it is at one instant: a zip with one CSV for each table and a manifest. People go on working
 * meanwhile. Sessions and sign-in attempts are left out; password hashes are not, so the file is to be kept safe.
 */
@Service
public class Backup {
    private final DataSource source;
    private final Clock clock;

    public Backup(DataSource source, Clock clock) {
        this.source = source;
        this.clock = clock;
    }

    /**
     * Writes the file and leaves the stream open.
     *
     * @throws IOException where the stream breaks; the database is only read
     */
    public Manifest write(OutputStream stream) throws IOException {
        try (Connection connection = source.getConnection()) {
            connection.setAutoCommit(false);
            try {
                return write(connection, stream);
            } finally {
                connection.rollback();
                connection.setAutoCommit(true);
            }
        } catch (SQLException e) {
            throw new IOException("the database could not be read", e);
        }
    }

    private Manifest write(Connection connection, OutputStream stream) throws SQLException, IOException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("set transaction isolation level repeatable read, read only");
        }
        Catalog catalog = new Catalog(connection);
        TableCopy copy = new TableCopy(connection);
        ZipOutputStream zip = new ZipOutputStream(new BufferedOutputStream(stream, 1 << 16));
        List<Manifest.Table> tables = new ArrayList<>();
        for (TableShape table : catalog.tables()) {
            zip.putNextEntry(new ZipEntry("tables/" + table.name() + ".csv"));
            tables.add(copy.out(table, zip));
            zip.closeEntry();
        }
        Manifest manifest = new Manifest(
                Manifest.FORMAT,
                catalog.schemaVersion(),
                clock.instant().truncatedTo(ChronoUnit.SECONDS),
                tables,
                catalog.sequences());
        zip.putNextEntry(new ZipEntry(Manifest.ENTRY));
        zip.write(JsonMapper.builder().build().writerWithDefaultPrettyPrinter().writeValueAsBytes(manifest));
        zip.closeEntry();
        zip.finish();
        zip.flush();
        return manifest;
    }
}
