package org.tallywright.bench.pages;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.context.TypeExcludeFilter;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.core.type.classreading.MetadataReader;
import org.springframework.core.type.classreading.MetadataReaderFactory;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.tallywright.Application;
import org.tallywright.catalog.CatalogSeed;

/** The whole application in this process on a database of its own in a given folder, with what it says to it on record. */
public final class BenchShop implements AutoCloseable {
    static final String NAME = "bench-owner";
    static final String PASSWORD = "ten years of sawdust";

    final Recorder recorder;
    private final ConfigurableApplicationContext app;

    private BenchShop(Recorder recorder, ConfigurableApplicationContext app) {
        this.recorder = recorder;
        this.app = app;
    }

    public static BenchShop start(Path folder) {
        Recorder recorder = new Recorder();
        ConfigurableApplicationContext app = new SpringApplicationBuilder(Application.class)
                .properties(Map.of(
                        "tallywright.data",
                        folder.toString(),
                        "server.port",
                        "0",
                        "spring.main.register-shutdown-hook",
                        "false"))
                .initializers(context -> {
                    context.getBeanFactory().addBeanPostProcessor(recorder);
                    context.getBeanFactory().registerSingleton("noTestBeans", new NoTestBeans());
                })
                .run("--tallywright.data=" + folder, "--server.port=0");
        return new BenchShop(recorder, app);
    }

    /** Fills the empty shop; see {@link Generator}. */
    public void fill(int wonJobs, int lostJobs, int days) throws SQLException {
        String hash = app.getBean(PasswordEncoder.class).encode(PASSWORD);
        // The superuser of the server that came along has the same password.
        try (Connection connection = connect("postgres")) {
            Generator generator = new Generator(connection, wonJobs, lostJobs, days);
            generator.people(NAME, hash);
            app.getBean(CatalogSeed.class).load();
            generator.work();
        }
    }

    Visitor visitor() throws IOException {
        return new Visitor("http://127.0.0.1:" + app.getEnvironment().getProperty("local.server.port"))
                .signIn(NAME, PASSWORD);
    }

    public <T> T bean(Class<T> type) {
        return app.getBean(type);
    }

    /** As the superuser, with triggers and foreign keys off. */
    public Connection connectTrusted() throws SQLException {
        Connection connection = connect("postgres");
        try (Statement statement = connection.createStatement()) {
            statement.execute("set session_replication_role = replica");
        }
        return connection;
    }

    /** A connection beside the application's pool. */
    Connection connect() throws SQLException {
        return connect(app.getBean(JdbcConnectionDetails.class).getUsername());
    }

    private Connection connect(String user) throws SQLException {
        JdbcConnectionDetails details = app.getBean(JdbcConnectionDetails.class);
        return DriverManager.getConnection(details.getJdbcUrl(), user, details.getPassword());
    }

    List<Connection> connections(int count) throws SQLException {
        List<Connection> all = new ArrayList<>();
        for (int n = 0; n < count; n++) {
            all.add(connect());
        }
        return all;
    }

    @Override
    public void close() {
        app.close();
    }

    /** Test classes lie on the same class path; their beans are not the application's. */
    private static final class NoTestBeans extends TypeExcludeFilter {
        @Override
        public boolean match(MetadataReader reader, MetadataReaderFactory factory) throws IOException {
            return reader.getResource().getURL().toString().contains("/test-classes/");
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof NoTestBeans;
        }

        @Override
        public int hashCode() {
            return NoTestBeans.class.hashCode();
        }
    }
}
