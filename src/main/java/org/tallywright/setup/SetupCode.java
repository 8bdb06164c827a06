package org.tallywright.setup;

import java.security.MessageDigest;
import java.security.SecureRandom;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.Locale;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Token;

/** The code that start prints while the shop is empty. Only its hash is kept; each start prints a new one. */
@Service
public class SetupCode {
    /** Letters and digits that are not mistaken for each other. */
    private static final String SIGNS = "abcdefghjkmnpqrstuvwxyz23456789";

    private static final SecureRandom RANDOM = new SecureRandom();

    private final JdbcClient jdbc;
    private final Clock clock;

    SetupCode(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Whether nobody has set this shop up yet. */
    public boolean shopIsEmpty() {
        return jdbc.sql("select not exists (select from shop) and not exists (select from person)")
                .query(Boolean.class)
                .single();
    }

    /** A new code for an empty shop, such as {@code k7m2-q9xt-h4wb}; none when the shop is set up. */
    @Transactional
    public Optional<String> next() {
        if (!shopIsEmpty()) {
            return Optional.empty();
        }
        String code = group() + "-" + group() + "-" + group();
        jdbc.sql("""
                        insert into setup_code (id, code_hash, made_at) values (1, ?, ?)
                        on conflict (id) do update set code_hash = excluded.code_hash, made_at = excluded.made_at""").params(Token.hash(code), Timestamp.from(clock.instant())).update();
        return Optional.of(code);
    }

    /** Uses the code up, or refuses. Two set-ups at once: the second finds no code. */
    @Transactional
    public void use(String typed) {
        String code = typed.strip().toLowerCase(Locale.ROOT);
        byte[] kept = jdbc.sql("select code_hash from setup_code where id = 1 for update")
                .query(byte[].class)
                .optional()
                .orElseThrow(() -> new Refused("code", "This shop is set up already; sign in instead."));
        if (!MessageDigest.isEqual(kept, Token.hash(code))) {
            throw new Refused("code", "This is not the code that the last start printed.");
        }
        jdbc.sql("delete from setup_code").update();
    }

    private static String group() {
        StringBuilder group = new StringBuilder();
        for (int i = 0; i < 4; i++) {
            group.append(SIGNS.charAt(RANDOM.nextInt(SIGNS.length())));
        }
        return group.toString();
    }
}
