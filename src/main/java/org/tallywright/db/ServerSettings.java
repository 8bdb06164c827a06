package org.tallywright.db;

import java.util.LinkedHashMap;
import java.util.Map;

/** How the local server is run: nothing lost, loopback only, and small, for one shop on a shared machine. */
final class ServerSettings {
    static final Map<String, String> ALL = all();

    private ServerSettings() {}

    private static Map<String, String> all() {
        Map<String, String> settings = new LinkedHashMap<>();
        // The library turns both off, which is fit for tests only.
        settings.put("fsync", "on");
        settings.put("synchronous_commit", "on");

        settings.put("listen_addresses", "127.0.0.1");
        settings.put("unix_socket_directories", "''");
        settings.put("timezone", "UTC");
        settings.put("log_timezone", "UTC");
        // No statements in the log: they would carry names and wages.
        settings.put("log_min_messages", "log");
        settings.put("log_min_error_statement", "panic");

        settings.put("max_connections", "40");
        settings.put("shared_buffers", "64MB");
        settings.put("effective_cache_size", "256MB");
        settings.put("work_mem", "8MB");
        settings.put("maintenance_work_mem", "32MB");
        settings.put("max_wal_size", "256MB");
        settings.put("jit", "off");
        settings.put("io_method", "sync");
        settings.put("wal_level", "minimal");
        settings.put("max_wal_senders", "0");
        settings.put("max_logical_replication_workers", "0");
        settings.put("max_parallel_workers_per_gather", "0");
        settings.put("autovacuum_max_workers", "2");
        return Map.copyOf(settings);
    }
}
