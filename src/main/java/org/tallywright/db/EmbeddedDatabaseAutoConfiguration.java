package org.tallywright.db;

import java.io.IOException;
import java.nio.file.Path;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.autoconfigure.AutoConfiguration;
import org.springframework.boot.autoconfigure.condition.ConditionalOnMissingBean;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.boot.jdbc.autoconfigure.DataSourceAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.tallywright.server.DataFolder;

/** Brings a database along, unless one is named by {@code spring.datasource.url} or given as a bean. */
@AutoConfiguration(
        before = DataSourceAutoConfiguration.class,
        afterName = "org.springframework.boot.testcontainers.service.connection.ServiceConnectionAutoConfiguration")
@ConditionalOnProperty(name = "spring.datasource.url", matchIfMissing = true, havingValue = "no value matches this")
@ConditionalOnMissingBean(JdbcConnectionDetails.class)
class EmbeddedDatabaseAutoConfiguration {
    @Bean(destroyMethod = "close")
    LocalPostgres localPostgres(
            @Value("${tallywright.data}") Path data, @Value("${tallywright.database-port:0}") int port)
            throws IOException {
        return LocalPostgres.start(DataFolder.prepare(data), port);
    }

    @Bean
    JdbcConnectionDetails localPostgresConnection(LocalPostgres postgres) {
        return new JdbcConnectionDetails() {
            @Override
            public String getUsername() {
                return LocalPostgres.USER;
            }

            @Override
            public String getPassword() {
                return postgres.password();
            }

            @Override
            public String getJdbcUrl() {
                return postgres.url();
            }
        };
    }
}
