package org.tallywright.sharing;

import java.sql.Timestamp;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Token;
import org.tallywright.shared.Typed;
import org.tallywright.trail.Trail;

/** Makes and ends links, and opens a job for who holds one. */
@Service
public class ClientLinks {
    private static final int LONGEST_DAYS = 730;

    private final ClientLinkRows rows;
    private final JdbcClient jdbc;
    private final ShopClock clock;
    private final Trail trail;

    ClientLinks(ClientLinkRows rows, JdbcClient jdbc, ShopClock clock, Trail trail) {
        this.rows = rows;
        this.jdbc = jdbc;
        this.clock = clock;
        this.trail = trail;
    }

    /** @return the token, shown once */
    @Transactional
    public String make(UUID job, String label, int days, UUID by) {
        if (days < 1 || days > LONGEST_DAYS) {
            throw new Refused("days", "A link lasts from 1 to " + LONGEST_DAYS + " days.");
        }
        trail.by(by);
        String token = Token.next();
        Instant now = clock.now();
        String name = Typed.line(label, 80);
        rows.save(new ClientLink(Ids.next(), job, Token.hash(token), name, now, by, now.plus(Duration.ofDays(days))));
        return token;
    }

    @Transactional
    public void revoke(UUID job, UUID link, UUID by) {
        trail.by(by);
        rows.findByIdAndJobId(link, job).orElseThrow(() -> new NotHere("link")).revoke(clock.now(), by);
    }

    /**
     * The job behind a token. A wrong, revoked and expired one look the same.
     *
     * @throws NotHere when the token opens nothing
     */
    @Transactional(readOnly = true)
    public UUID jobOf(String token) {
        return rows.findByTokenHash(Token.hash(token))
                .filter(link -> link.opensAt(clock.now()))
                .map(ClientLink::jobId)
                .orElseThrow(() -> new NotHere("page"));
    }

    /** Counts a look, so that the owner sees whether the client came. */
    @Transactional
    public void seen(String token) {
        jdbc.sql("update client_link set views = views + 1, last_seen_at = ? where token_hash = ?")
                .params(Timestamp.from(clock.now()), Token.hash(token))
                .update();
    }

    public List<Row> of(UUID job) {
        return jdbc.sql("""
                        select l.id, l.label, l.created_at, p.name as created_by, l.expires_at, l.revoked_at, l.last_seen_at, l.views
                        from client_link l join person p on p.id = l.created_by where l.job_id = ? order by l.created_at desc, l.id desc""")
                .param(job)
                .query((row, n) -> new Row(
                        row.getObject("id", UUID.class),
                        row.getString("label"),
                        row.getTimestamp("created_at").toInstant(),
                        row.getString("created_by"),
                        row.getTimestamp("expires_at").toInstant(),
                        instant(row.getTimestamp("revoked_at")),
                        instant(row.getTimestamp("last_seen_at")),
                        row.getInt("views")))
                .list();
    }

    private static @Nullable Instant instant(@Nullable Timestamp stamp) {
        return stamp == null ? null : stamp.toInstant();
    }

    /** A link as the owner reads it; its address was shown once and is not kept. */
    public record Row(
            UUID id,
            String label,
            Instant createdAt,
            String createdBy,
            Instant expiresAt,
            @Nullable Instant revokedAt,
            @Nullable Instant lastSeenAt,
            int views) {
        public boolean opensAt(Instant now) {
            return revokedAt == null && now.isBefore(expiresAt);
        }
    }
}
