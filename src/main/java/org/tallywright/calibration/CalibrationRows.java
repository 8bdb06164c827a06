package org.tallywright.calibration;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Ids;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** The kept calibrations. */
@Component
class CalibrationRows {
    /** Finished calibrations to go back to. */
    static final int NEWEST = 30;

    private static final int FAILED = 5;

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final PastPack pack;

    CalibrationRows(JdbcClient jdbc, JsonMapper json, PastPack pack) {
        this.jdbc = jdbc;
        this.json = json;
        this.pack = pack;
    }

    record Row(
            UUID id,
            String state,
            String why,
            String step,
            Instant askedAt,
            @Nullable Instant madeAt,
            String fingerprint,
            boolean current) {
        public boolean isUnderWay() {
            return state.equals("asked") || state.equals("running");
        }
    }

    /** The whole of a finished one. */
    record Kept(Row row, Past past, Figures figures, List<Judged> record) {}

    /** Several reasons that come together make one calibration. */
    void ask(String why, Instant at) {
        jdbc.sql("""
                        insert into calibration (id, asked_at, state, why) values (?, ?, 'asked', ?)
                        on conflict (state) where state = 'asked'
                        do update set why = left(calibration.why || '; ' || excluded.why, 400)""").params(Ids.next(), Timestamp.from(at), why).update();
    }

    /** The next one to make: asked for, or left by a server that stopped. */
    Optional<UUID> claim(Instant now) {
        return jdbc.sql("""
                        update calibration set state = 'running', started_at = :now, step = 'Reading the finished jobs'
                        where id = (select id from calibration
                            where state = 'asked' or (state = 'running' and started_at < :stale)
                            order by asked_at limit 1 for update skip locked)
                        returning id""")
                .param("now", Timestamp.from(now))
                .param("stale", Timestamp.from(now.minusSeconds(600)))
                .query(UUID.class)
                .optional();
    }

    void step(UUID id, String step) {
        jdbc.sql("update calibration set step = ? where id = ?")
                .params(step, id)
                .update();
    }

    void forget(UUID id) {
        jdbc.sql("delete from calibration where id = ?").param(id).update();
    }

    void fail(UUID id, String why) {
        jdbc.sql("update calibration set state = 'failed', step = ? where id = ?")
                .params(why, id)
                .update();
    }

    /** @param fingerprint of {@code past} */
    void keep(UUID id, Past past, String fingerprint, Figures figures, List<Judged> record, Instant at) {
        jdbc.sql("""
                        update calibration set state = 'done', step = '', made_at = ?, fingerprint = ?, past_packed = ?,
                            figures = ?::jsonb, record = ?::jsonb where id = ?""")
                .params(
                        Timestamp.from(at),
                        fingerprint,
                        pack.pack(past),
                        json.writeValueAsString(figures),
                        json.writeValueAsString(record),
                        id)
                .update();
        use(id);
    }

    /**
     * Deletes what nobody can need: finished ones beyond the newest that a person may go back to, unless in use, or a bid or a
     * running job was forecast with it; failed ones as old.
     */
    int prune() {
        return jdbc.sql("""
                        delete from calibration c where not current and state in ('done', 'failed')
                        and coalesce(made_at, asked_at) < (select min(made_at) from (select made_at from calibration
                            where state = 'done' order by made_at desc, id desc limit :newest) n)
                        and not exists (select 1 from bid_forecast f where f.calibration_id = c.id)
                        and not exists (select 1 from agreed_forecast f where f.calibration_id = c.id)
                        and not exists (select 1 from running_forecast f join job j on j.id = f.job_id
                            where f.calibration_id = c.id and j.state = 'running')""").param("newest", NEWEST).update();
    }

    void use(UUID id) {
        jdbc.sql("update calibration set current = false where current").update();
        jdbc.sql("update calibration set current = true where id = ?").param(id).update();
    }

    /** The same data measured by another engine are another calibration. */
    String fingerprint(Past past) {
        return sum("engine " + Fitted.ENGINE + '\n' + past.canonical());
    }

    private static String sum(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Whether any finished one was made by the engine of today. */
    boolean hasOneOfThisEngine() {
        return jdbc.sql(
                        "select exists (select 1 from calibration where state = 'done' and (figures ->> 'engine')::int = ?)")
                .param(Fitted.ENGINE)
                .query(Boolean.class)
                .single();
    }

    boolean hasAny() {
        return jdbc.sql("select exists (select 1 from calibration where state = 'done')")
                .query(Boolean.class)
                .single();
    }

    Optional<UUID> current() {
        return jdbc.sql("select id from calibration where current")
                .query(UUID.class)
                .optional();
    }

    Optional<Row> row(UUID id) {
        return jdbc.sql(SELECT + " where id = ?")
                .param(id)
                .query(CalibrationRows::row)
                .optional();
    }

    List<Row> newest(int most) {
        return jdbc.sql(SELECT + " order by coalesce(made_at, asked_at) desc, id desc limit ?")
                .param(most)
                .query(CalibrationRows::row)
                .list();
    }

    /** To choose from: the newest finished ones and the one in use, those under way, and what failed lately. The newest first. */
    List<Row> listed() {
        return jdbc.sql(SELECT + """
                         where current or state in ('asked', 'running')
                        or id in (select id from calibration where state = 'done' order by made_at desc, id desc limit :newest)
                        or id in (select id from calibration where state = 'failed' order by asked_at desc, id desc limit :failed)
                        order by coalesce(made_at, asked_at) desc, id desc""")
                .param("newest", NEWEST)
                .param("failed", FAILED)
                .query(CalibrationRows::row)
                .list();
    }

    /** The one that is being made, else one that waits. */
    Optional<Row> underWay() {
        return jdbc.sql(SELECT + " where state in ('asked', 'running') order by state desc, asked_at limit 1")
                .query(CalibrationRows::row)
                .optional();
    }

    /** The finished one made just before that one. */
    Optional<UUID> before(UUID id) {
        return jdbc.sql("""
                        select id from calibration where state = 'done'
                        and (made_at, id) < (select made_at, id from calibration where id = ?) order by made_at desc, id desc limit 1""").param(id).query(UUID.class).optional();
    }

    Optional<Kept> kept(UUID id) {
        return jdbc.sql(
                        "select id, state, why, step, asked_at, made_at, fingerprint, current, past_packed, past::text as p, figures::text as f, record::text as r from calibration"
                                + " where id = ? and state = 'done'")
                .param(id)
                .query((row, n) -> new Kept(
                        row(row, n),
                        past(row),
                        json.readValue(row.getString("f"), Figures.class),
                        json.readValue(row.getString("r"), new TypeReference<List<Judged>>() {})))
                .optional();
    }

    private Past past(ResultSet row) throws SQLException {
        byte[] packed = row.getBytes("past_packed");
        return packed == null ? json.readValue(row.getString("p"), Past.class) : pack.unpack(packed);
    }

    private static final String SELECT =
            "select id, state, why, step, asked_at, made_at, fingerprint, current from calibration";

    private static Row row(ResultSet row, int n) throws SQLException {
        Timestamp made = row.getTimestamp("made_at");
        return new Row(
                row.getObject("id", UUID.class),
                row.getString("state"),
                row.getString("why"),
                row.getString("step"),
                row.getTimestamp("asked_at").toInstant(),
                made == null ? null : made.toInstant(),
                row.getString("fingerprint"),
                row.getBoolean("current"));
    }
}
