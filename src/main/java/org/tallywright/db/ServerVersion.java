package org.tallywright.db;

import java.sql.Connection;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.tallywright.server.StartRefused;

/** A database of the owner's own must be at least of the version that everything is tested on. */
final class ServerVersion {
    private ServerVersion() {}

    static void refuseOlder(DataSource source) {
        try (Connection connection = source.getConnection()) {
            int major = connection.getMetaData().getDatabaseMajorVersion();
            if (major < Integer.parseInt(Cluster.MAJOR)) {
                throw new StartRefused("The database is PostgreSQL " + major + "; Tallywright needs PostgreSQL "
                        + Cluster.MAJOR + " or newer.");
            }
        } catch (SQLException e) {
            throw new IllegalStateException("the database does not tell its version", e);
        }
    }
}
