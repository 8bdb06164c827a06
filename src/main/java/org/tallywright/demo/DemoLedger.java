package org.tallywright.demo;

import java.math.BigDecimal;
import java.sql.Date;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Units;

/** What the parts of one loading share: the calendar, the ids given so far, and the way into the tables. */
final class DemoLedger {
    private final JdbcTemplate jdbc;
    private final ShopClock clock;
    private final DemoCalendar calendar;
    private final Map<String, UUID> ids = new HashMap<>();

    DemoLedger(JdbcTemplate jdbc, ShopClock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
        this.calendar = new DemoCalendar(clock.today());
    }

    JdbcTemplate jdbc() {
        return jdbc;
    }

    LocalDate date(String offset) {
        return calendar.date(offset);
    }

    @Nullable
    LocalDate dateOrNull(String offset) {
        return offset.isEmpty() ? null : calendar.date(offset);
    }

    /** Minute of that shop day, never later than now. */
    Instant at(String offset, int minuteOfDay) {
        Instant wanted = date(offset)
                .atTime(LocalTime.MIN.plusMinutes(minuteOfDay))
                .atZone(clock.zone())
                .toInstant();
        return wanted.isAfter(clock.now()) ? clock.now() : wanted;
    }

    static Timestamp stamp(Instant instant) {
        return Timestamp.from(instant);
    }

    static @Nullable Date day(@Nullable LocalDate date) {
        return date == null ? null : Date.valueOf(date);
    }

    /** A new id under a key such as {@code job/study}. */
    UUID make(String key) {
        UUID id = Ids.next();
        ids.put(key, id);
        return id;
    }

    void know(String key, UUID id) {
        ids.put(key, id);
    }

    UUID id(String key) {
        UUID id = ids.get(key);
        if (id == null) {
            throw new IllegalStateException("the scenario names nothing before " + key);
        }
        return id;
    }

    @Nullable
    UUID idOrNull(String key) {
        return ids.get(key);
    }

    void knowAll(String prefix, String sql) {
        jdbc.query(sql, row -> {
            ids.put(prefix + row.getString(2), row.getObject(1, UUID.class));
        });
    }

    void insert(String sql, List<Object[]> rows) {
        jdbc.batchUpdate(sql, rows);
    }

    static @Nullable Long length(String typed) {
        return typed.isEmpty() ? null : Length.parse(typed, Units.IMPERIAL).units();
    }

    /** One that may lie below its mark. */
    static long signedLength(String typed) {
        return Length.parseSigned(typed, Units.IMPERIAL).units();
    }

    static BigDecimal number(String typed) {
        return new BigDecimal(typed.isEmpty() ? "0" : typed);
    }

    static List<Object[]> list() {
        return new ArrayList<>();
    }
}
