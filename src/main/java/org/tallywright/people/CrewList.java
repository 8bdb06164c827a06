package org.tallywright.people;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The crew as owner and bookkeeper read it, pay included. */
@Component
public class CrewList {
    private static final String MEMBERS = """
            select p.id, p.name, p.role, p.active, p.version, a.sign_in_name,
                   w.wage_amount, w.burden_percent, round(w.wage_amount * (1 + w.burden_percent / 100), 2) as burdened_amount,
                   (select i.expires_at::date from invitation i where i.person_id = p.id and i.used_at is null
                        and i.revoked_at is null order by i.created_at desc limit 1) as invited_until
            from person p
            left join account a on a.person_id = p.id
            left join lateral (select wage_amount, burden_percent from wage
                where person_id = p.id and from_date <= :day order by from_date desc limit 1) w on true
            """;

    private final JdbcClient jdbc;

    CrewList(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Active people first, then by name; pay as on that day. */
    public List<Member> all(LocalDate day) {
        return jdbc.sql(MEMBERS + "order by p.active desc, lower(p.name), p.id")
                .param("day", day)
                .query(Member.class)
                .list();
    }

    public Optional<Member> one(UUID id, LocalDate day) {
        return jdbc.sql(MEMBERS + "where p.id = :id")
                .param("day", day)
                .param("id", id)
                .query(Member.class)
                .optional();
    }

    /**
     * One person; pay per hour in the shop's currency.
     *
     * @param signInName null until an invitation was used
     * @param wageAmount null before the first dated wage
     * @param invitedUntil last day of an unused invitation
     */
    public record Member(
            UUID id,
            String name,
            String role,
            boolean active,
            int version,
            @Nullable String signInName,
            @Nullable BigDecimal wageAmount,
            @Nullable BigDecimal burdenPercent,
            @Nullable BigDecimal burdenedAmount,
            @Nullable LocalDate invitedUntil) {}
}
