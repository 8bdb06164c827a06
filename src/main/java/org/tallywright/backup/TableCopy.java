package org.tallywright.backup;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.security.DigestInputStream;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyManager;

/** Moves one table at a time between the database and a CSV, taking its SHA-256 on the way. */
final class TableCopy {
    private final CopyManager copies;

    TableCopy(Connection connection) throws SQLException {
        copies = connection.unwrap(PGConnection.class).getCopyAPI();
        try (Statement statement = connection.createStatement()) {
            // How values are written must not depend on the settings of a role or a server.
            statement.execute("set local datestyle = 'ISO'");
            statement.execute("set local timezone = 'UTC'");
            statement.execute("set local intervalstyle = 'postgres'");
            statement.execute("set local bytea_output = 'hex'");
            statement.execute("set local extra_float_digits = 1");
        }
    }

    Manifest.Table out(TableShape table, OutputStream csv) throws SQLException, IOException {
        MessageDigest digest = Digests.sha256();
        DigestOutputStream through = new DigestOutputStream(csv, digest);
        long rows = copies.copyOut(table.copyOut(), through);
        through.flush();
        return new Manifest.Table(table.name(), table.columns(), rows, Digests.hex(digest));
    }

    Manifest.Table in(TableShape table, InputStream csv) throws SQLException, IOException {
        MessageDigest digest = Digests.sha256();
        long rows = copies.copyIn(table.copyIn(), new DigestInputStream(csv, digest));
        return new Manifest.Table(table.name(), table.columns(), rows, Digests.hex(digest));
    }
}
