package org.tallywright;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;

/** Points the application at the one PostgreSQL of this JVM; {@link TestServer} says how that one is chosen. */
@TestConfiguration(proxyBeanMethods = false)
public class TestDatabase {
    private static final String NAME = "tallywright";

    private static final class Holder {
        static final TestServer SERVER = start();

        private static TestServer start() {
            TestServer server = TestServer.pick();
            server.createDatabase(NAME);
            return server;
        }
    }

    /** The server, for tests that need a database of their own on it. */
    public static TestServer server() {
        return Holder.SERVER;
    }

    /** A plain connection to the application's database, as superuser. */
    public static Connection open() throws SQLException {
        TestServer server = server();
        return DriverManager.getConnection(server.url(NAME), server.user(), server.password());
    }

    @Bean
    JdbcConnectionDetails testConnection() {
        TestServer server = server();
        return new JdbcConnectionDetails() {
            @Override
            public String getUsername() {
                return server.user();
            }

            @Override
            public String getPassword() {
                return server.password();
            }

            @Override
            public String getJdbcUrl() {
                return server.url(NAME);
            }
        };
    }
}
