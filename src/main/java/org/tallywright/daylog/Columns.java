package org.tallywright.daylog;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalTime;
import java.util.Collection;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.ClockSpan;
import org.tallywright.shared.ShopAccount;

/** How the values of this module stand in its tables. */
final class Columns {
    private Columns() {}

    static @Nullable String of(@Nullable ShopAccount account) {
        return account == null ? null : account.code();
    }

    static @Nullable String start(@Nullable ClockSpan span) {
        return span == null ? null : span.start().toString();
    }

    /** Midnight at the end of the day is 24:00, which {@link LocalTime} cannot say; hence text. */
    static @Nullable String end(@Nullable ClockSpan span) {
        if (span == null) {
            return null;
        }
        return span.end().equals(LocalTime.MIDNIGHT) ? "24:00" : span.end().toString();
    }

    static @Nullable ClockSpan span(ResultSet row) throws SQLException {
        String from = row.getString("starts_at");
        String to = row.getString("ends_at");
        if (from == null || to == null) {
            return null;
        }
        return new ClockSpan(LocalTime.parse(from), to.startsWith("24") ? LocalTime.MIDNIGHT : LocalTime.parse(to));
    }

    /** An array of ids as PostgreSQL writes it, so that the statement's text is the same for any number of them. */
    static String ids(Collection<UUID> ids) {
        return ids.stream().map(UUID::toString).collect(Collectors.joining(",", "{", "}"));
    }

    static @Nullable Integer whole(ResultSet row, String column) throws SQLException {
        int value = row.getInt(column);
        return row.wasNull() ? null : value;
    }
}
